// SPDX-License-Identifier: MIT
#include "ontology/names.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/fold.h"
#include "base/nearest.h"

namespace asterism {

void NameIndex::add(std::string_view name, std::uint32_t target, bool printed) {
    make_growable();
    auto& targets = targets_[fold(name)];
    if (std::find(targets.begin(), targets.end(), target) == targets.end())
        targets.push_back(target);
    if (printed) printed_.emplace_back(name);
}

std::vector<std::uint32_t> NameIndex::exact(std::string_view name) const {
    if (stored_) return stored_->find(fold(name));
    auto const found = targets_.find(fold(name));
    return found == targets_.end() ? std::vector<std::uint32_t>{} : found->second;
}

Resolution NameIndex::resolve(std::string_view typed) const {
    Resolution resolution{exact(typed), {}};
    if (resolution.targets.empty()) resolution.nearest = nearest(typed, printed());
    return resolution;
}

std::vector<std::string> const& NameIndex::printed() const {
    return stored_ ? stored_->printed() : printed_;
}

std::string NameIndex::stored() const {
    if (stored_) return std::string(stored_->bytes());
    StoredNames::Targets targets(targets_.begin(), targets_.end());
    std::sort(targets.begin(), targets.end());
    return StoredNames::pack(targets, printed_);
}

NameIndex NameIndex::from_stored(std::string_view bytes) {
    NameIndex index;
    index.stored_ = std::make_shared<StoredNames const>(bytes);
    return index;
}

void NameIndex::make_growable() {
    if (!stored_) return;
    for (auto& [name, targets] : stored_->targets()) targets_.emplace(name, targets);
    printed_ = stored_->printed();
    stored_ = nullptr;
}

void report_unresolved(Word const& word, std::string_view what, Resolution const& resolution,
                       std::vector<std::string> const& candidates, Diagnostics& diagnostics) {
    if (resolution.ambiguous()) {
        diagnostics.error("ambiguous-name", word.span,
                          fmt::format("the {} `{}` can mean more than one thing", what, word.text),
                          fmt::format("write which: `{}`", fmt::join(candidates, "` or `")));
        return;
    }
    diagnostics.error(fmt::format("unknown-{}", what), word.span,
                      fmt::format("unknown {} `{}`", what, word.text),
                      did_you_mean(resolution.nearest));
}

}  // namespace asterism
