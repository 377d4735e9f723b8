// SPDX-License-Identifier: MIT
#include "audit/services.h"

#include <algorithm>
#include <future>

namespace asterism::audit {

namespace {

struct Made {
    Diagnostics diagnostics;
    std::optional<ReadyBook> book;
};

Made make(Shelf const& shelf, ShelvedBook const& shelved,
          std::shared_ptr<Ontology const> const& ontology) {
    Made made;
    auto const book = shelf.load(shelved, made.diagnostics);
    auto compiled = book ? compile(book, ontology, made.diagnostics) : std::nullopt;
    if (!compiled) return made;
    made.book.emplace();
    made.book->version = shelved.version;
    made.book->effective = shelved.effective;
    made.book->digest = book->digest;
    made.book->book = std::make_unique<CompiledRulebook const>(std::move(*compiled));
    made.book->fast.emplace(*made.book->book);
    return made;
}

}  // namespace

std::size_t Services::add(std::string const& id, std::string const& label) {
    if (auto const known = find(id)) return *known;
    ids_.push_back(id);
    labels_.push_back(label);
    return ids_.size() - 1;
}

std::optional<std::size_t> Services::find(std::string_view id) const {
    auto const at = std::find(ids_.begin(), ids_.end(), id);
    if (at == ids_.end()) return std::nullopt;
    return static_cast<std::size_t>(at - ids_.begin());
}

std::optional<Books> Books::ready(Shelf const& shelf, std::shared_ptr<Ontology const> ontology,
                                  std::optional<Date> only, Diagnostics& diagnostics) {
    std::vector<std::future<Made>> making;
    auto const* const one = only ? shelf.in_force(*only) : nullptr;
    for (auto const& shelved : shelf.books()) {
        if (one && &shelved != one) continue;
        making.push_back(std::async(std::launch::async, make, std::cref(shelf), std::cref(shelved),
                                    std::cref(ontology)));
    }
    Books books;
    books.fixed_ = one != nullptr;
    for (auto& future : making) {
        auto made = future.get();
        diagnostics.append(made.diagnostics);
        if (made.book) books.all_.push_back(std::move(*made.book));
    }
    if (books.all_.size() != making.size() || books.all_.empty()) return std::nullopt;
    for (auto book = books.all_.rbegin(); book != books.all_.rend(); ++book) {
        for (auto const& service : book->book->book->services)
            book->service_at.push_back(books.services_.add(service.id.text, service.label));
    }
    return books;
}

std::optional<std::size_t> Books::in_force(Date day) const {
    if (fixed_) return 0;
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < all_.size(); ++i) {
        if (all_[i].effective <= day) found = i;
    }
    return found;
}

}  // namespace asterism::audit
