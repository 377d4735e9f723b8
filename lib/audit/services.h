// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "batch/fast_book.h"
#include "rulebook/shelf.h"

namespace asterism::audit {

/// Every service of every book, newest book's order first: what tables are made for.
class Services {
public:
    /// The service's place, added at the end when it is new.
    std::size_t add(std::string const& id, std::string const& label);
    std::optional<std::size_t> find(std::string_view id) const;

    std::size_t size() const { return ids_.size(); }
    std::vector<std::string> const& ids() const { return ids_; }
    std::string const& label(std::size_t at) const { return labels_[at]; }

private:
    std::vector<std::string> ids_;
    std::vector<std::string> labels_;
};

/// A book of the shelf, as known without reading its rules.
struct BookOfDays {
    std::string id, version, digest;
    Date effective{};
};

/// A book made ready to judge many babies.
struct ReadyBook {
    explicit ReadyBook(CompiledRulebook compiled)
        : book(std::make_unique<CompiledRulebook const>(std::move(compiled))), fast(*book) {}

    std::unique_ptr<CompiledRulebook const> book;
    batch::FastBook fast;
    std::vector<std::size_t> service_at;  ///< by ServiceId: place in Services
};

/// The books of a shelf, each baby's being the one in force on its exam day. A book is read and
/// compiled when the first baby asks for it: a year's babies mostly ask for one.
class Books {
public:
    /// Opens every book of the shelf, or only the one in force on `only`. Reported, and nothing
    /// returned: a header or services that cannot be read, and a released book that is not the one
    /// listed, of any book, whether a baby will ask for it or not. What else is wrong with a book
    /// is reported by `problems` once it was asked for. Nothing more is said of a book that nobody
    /// asks for, nor of vignettes: no figure rests on them, and `check` and `rehearse` tell.
    static std::optional<Books> open(Shelf shelf, std::shared_ptr<Ontology const> ontology,
                                     std::optional<Date> only, Diagnostics& diagnostics);
    Books(Books&&) noexcept;
    ~Books();

    /// By date.
    std::vector<BookOfDays> const& all() const { return all_; }
    Services const& services() const { return services_; }
    Ontology const& ontology() const { return *ontology_; }
    /// The place of the book in force that day; nothing before the first.
    std::optional<std::size_t> in_force(Date day) const;

    /// The book at a place of `all`, read and compiled at the first call, by any thread; null when
    /// that fails: an audit without its babies would mislead, so look at `problems`.
    ReadyBook const* ready(std::size_t at) const;
    /// What was reported of the books that were asked for. No thread may still be asking.
    Diagnostics problems() const;

private:
    struct Slot;

    Books(Shelf shelf, std::shared_ptr<Ontology const> ontology);
    void make(std::size_t at, Slot& slot) const;

    Shelf shelf_;
    std::shared_ptr<Ontology const> ontology_;
    std::vector<BookOfDays> all_;
    std::vector<std::unique_ptr<Slot>> slots_;  ///< by `all`
    Services services_;
    bool fixed_ = false;  ///< one book for every day
};

}  // namespace asterism::audit
