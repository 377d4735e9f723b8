// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "compile/compiled.h"

namespace asterism::image {

/// The image does not fit this program: cut short, of another build, or damaged.
struct BadImage : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// Gives the text of a source by its name; it must outlive every book read from the image.
using TextOf = std::function<std::string_view(std::string const& name)>;

/// A compiled book as bytes, from which `read` makes it again without any YAML. Places are kept by
/// the name of their file, whose text is not stored. Left out is what only reading and reviewing a
/// book need: its vignettes and promises, the unread conditions, the unread sections of the norms.
std::string write(CompiledRulebook const& book);

/// The book of an image, equal to the compiled one in everything but what `write` leaves out.
/// Throws BadImage. Findings, rules and whatever else stands in long lists are read when they are
/// first asked for: the bytes must outlive the book, and a list whose frame is whole throws only
/// then.
CompiledRulebook read(std::string_view bytes, TextOf const& text_of);

/// The shipped book, read and compiled from the files carried in the program, which must be free
/// of errors.
CompiledRulebook compile_embedded();

/// The text of a file carried in the program; throws BadImage when there is none of this name.
std::string_view embedded_text(std::string const& name);

}  // namespace asterism::image
