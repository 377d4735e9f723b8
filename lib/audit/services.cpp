// SPDX-License-Identifier: MIT
#include "audit/services.h"

#include <algorithm>
#include <mutex>

#include <fmt/format.h>

namespace asterism::audit {

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

/// A book of the shelf and what became of it.
struct Books::Slot {
    ShelvedBook const* shelved = nullptr;
    std::once_flag asked;
    std::optional<ReadyBook> ready;
    Diagnostics diagnostics;
};

Books::Books(Shelf shelf, std::shared_ptr<Ontology const> ontology)
    : shelf_(std::move(shelf)), ontology_(std::move(ontology)) {}
Books::Books(Books&&) noexcept = default;
Books::~Books() = default;

std::optional<Books> Books::open(Shelf shelf, std::shared_ptr<Ontology const> ontology,
                                 std::optional<Date> only, Diagnostics& diagnostics) {
    Books books(std::move(shelf), std::move(ontology));
    auto const* const one = only ? books.shelf_.in_force(*only) : nullptr;
    books.fixed_ = one != nullptr;
    std::vector<BookOutline> outlines;
    bool fine = true;
    for (auto const& shelved : books.shelf_.books()) {
        if (one && &shelved != one) continue;
        auto outline = books.shelf_.outline(shelved, diagnostics);
        fine = fine && outline;
        if (!outline) continue;
        books.all_.push_back(
            {outline->header.id.text, shelved.version, outline->digest, shelved.effective});
        books.slots_.push_back(std::make_unique<Slot>());
        books.slots_.back()->shelved = &shelved;
        outlines.push_back(std::move(*outline));
    }
    if (!fine || outlines.empty()) return std::nullopt;
    for (auto book = outlines.rbegin(); book != outlines.rend(); ++book) {
        for (auto const& service : book->services)
            books.services_.add(service.id.text, service.label);
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

ReadyBook const* Books::ready(std::size_t at) const {
    auto& slot = *slots_[at];
    std::call_once(slot.asked, [&] { make(at, slot); });
    return slot.ready ? &*slot.ready : nullptr;
}

void Books::make(std::size_t at, Slot& slot) const {
    auto const book = shelf_.load_to_judge(*slot.shelved, slot.diagnostics);
    auto compiled = book ? compile(book, ontology_, slot.diagnostics) : std::nullopt;
    if (!compiled) return;
    ReadyBook ready(std::move(*compiled));
    for (auto const& service : book->services) {
        auto const place = services_.find(service.id.text);
        if (place) ready.service_at.push_back(*place);
        if (!place)
            slot.diagnostics.error("unknown-service", service.id.span,
                                   fmt::format("the service `{}` did not show when the book {} was "
                                               "opened",
                                               service.id.text, all_[at].version),
                                   "write the key `services` without escapes");
    }
    if (ready.service_at.size() != book->services.size()) return;
    slot.ready = std::move(ready);
}

Diagnostics Books::problems() const {
    Diagnostics all;
    for (auto const& slot : slots_) all.append(slot->diagnostics);
    return all;
}

}  // namespace asterism::audit
