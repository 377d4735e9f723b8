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

/// A book made ready to judge many babies.
struct ReadyBook {
    std::string version;
    std::string digest;
    Date effective{};
    std::unique_ptr<CompiledRulebook const> book;
    std::optional<batch::FastBook> fast;
    std::vector<std::size_t> service_at;  ///< by ServiceId: place in Services
};

/// The books of a shelf, each baby's being the one in force on its exam day.
class Books {
public:
    /// Reads and compiles every book of the shelf, or only the one in force on `only`. Nothing
    /// after an error.
    static std::optional<Books> ready(Shelf const& shelf, std::shared_ptr<Ontology const> ontology,
                                      std::optional<Date> only, Diagnostics& diagnostics);

    std::vector<ReadyBook> const& all() const { return all_; }
    Services const& services() const { return services_; }
    Ontology const& ontology() const { return *all_.front().book->ontology; }
    /// The place of the book in force that day; nothing before the first.
    std::optional<std::size_t> in_force(Date day) const;

private:
    std::vector<ReadyBook> all_;  ///< by date
    Services services_;
    bool fixed_ = false;  ///< one book for every day
};

}  // namespace asterism::audit
