// SPDX-License-Identifier: MIT
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace asterism {

/// The text made inert inside HTML or SVG, between tags and in quoted attributes: control
/// characters and marks that turn the writing become visible, then `& < > " '` become entities.
std::string html_safe(std::string_view text);

/// A picture of our own making as an address that holds it: nothing is fetched, and its styles and
/// ids stay apart from those of the page.
std::string svg_address(std::string_view svg);

using Attribute = std::pair<std::string_view, std::string>;
using Attributes = std::vector<Attribute>;

/// Builds well-formed markup (HTML and the SVG within it): every text and attribute value is
/// escaped, every element that was opened is closed. Element and attribute names are ours and never
/// come from outside.
class Markup {
public:
    Markup& open(std::string_view tag, Attributes const& attributes = {});
    Markup& close();
    Markup& text(std::string_view text);
    /// An element with a text and nothing else.
    Markup& element(std::string_view tag, std::string_view text, Attributes const& attributes = {});
    /// An element without content that HTML never closes, such as `meta`.
    Markup& empty(std::string_view tag, Attributes const& attributes = {});
    /// Markup of our own making, as it is. Never call it with a text from outside.
    Markup& trusted(std::string_view markup);
    Markup& new_line();

    /// The whole text; elements still open are closed first.
    std::string take();

private:
    void start(std::string_view tag, Attributes const& attributes);

    std::string out_;
    std::vector<std::string> open_;
};

/// Closes an element at the end of a scope.
class Scope {
public:
    Scope(Markup& markup, std::string_view tag, Attributes const& attributes = {})
        : markup_(markup) {
        markup_.open(tag, attributes);
    }
    Scope(Scope const&) = delete;
    Scope& operator=(Scope const&) = delete;
    ~Scope() { markup_.close(); }

private:
    Markup& markup_;
};

/// A whole page: no script, and a policy that forbids the browser to fetch anything.
struct Page {
    std::string title;
    std::string style;  ///< CSS of our own
    std::string body;   ///< markup of our own making
};

std::string html_page(Page const& page);

}  // namespace asterism
