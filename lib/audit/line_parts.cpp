// SPDX-License-Identifier: MIT
#include "audit/line_parts.h"

#include <algorithm>

#include "yaml/read.h"

namespace asterism::audit {

namespace {

class Cutter {
public:
    explicit Cutter(std::string_view line) : line_(line) {}

    bool cut(std::vector<LineMember>& members) {
        skip_space();
        if (!take('{')) return false;
        skip_space();
        if (take('}')) return at_end();
        do {
            if (!member(members)) return false;
        } while (take(','));
        return take('}') && at_end();
    }

private:
    bool member(std::vector<LineMember>& members) {
        skip_space();
        LineMember found;
        found.begin = at_;
        if (!skip_string()) return false;
        found.key = line_.substr(found.begin + 1, at_ - found.begin - 2);
        skip_space();
        if (!take(':')) return false;
        skip_space();
        auto const begin = at_;
        if (!skip_value()) return false;
        found.end = at_;
        found.value = line_.substr(begin, at_ - begin);
        members.push_back(found);
        skip_space();
        return true;
    }

    bool skip_value() {
        if (at_ == line_.size()) return false;
        if (line_[at_] == '"') return skip_string();
        if (line_[at_] == '{' || line_[at_] == '[') return skip_nested();
        auto const begin = at_;
        at_ = std::min(line_.find_first_of(",}] \t\r", at_), line_.size());
        return at_ > begin;
    }

    bool skip_nested() {
        int depth = 0;
        while (at_ < line_.size()) {
            char const c = line_[at_];
            if (c == '"') {
                if (!skip_string()) return false;
                continue;
            }
            ++at_;
            if (c == '{' || c == '[') ++depth;
            if ((c == '}' || c == ']') && --depth == 0) return true;
        }
        return false;
    }

    bool skip_string() {
        if (!take('"')) return false;
        while (at_ < line_.size()) {
            char const c = line_[at_++];
            if (c == '"') return true;
            if (c == '\\') ++at_;
        }
        return false;
    }

    bool take(char wanted) {
        if (at_ >= line_.size() || line_[at_] != wanted) return false;
        ++at_;
        return true;
    }
    void skip_space() {
        while (at_ < line_.size() && (line_[at_] == ' ' || line_[at_] == '\t')) ++at_;
    }
    bool at_end() {
        skip_space();
        return at_ == line_.size() || line_[at_] == '\r';
    }

    std::string_view line_;
    std::size_t at_ = 0;
};

}  // namespace

bool split_line(std::string_view line, std::vector<LineMember>& members) {
    members.clear();
    return Cutter(line).cut(members);
}

void blank_out(char* line, std::vector<LineMember> const& members,
               std::vector<bool> const& removed) {
    std::size_t kept_end = members.empty() ? 0 : members.front().begin;
    for (std::size_t i = 0; i < members.size(); ++i) {
        if (!removed[i]) {
            kept_end = members[i].end;
        } else if (i + 1 < members.size()) {
            std::fill(line + members[i].begin, line + members[i + 1].begin, ' ');
        } else {
            std::fill(line + kept_end, line + members[i].end, ' ');
        }
    }
}

bool plain_text(LineMember const& member, std::string& text) {
    if (!member.is_text()) {
        text = member.value;
        return !text.empty() &&
               std::string_view("-0123456789").find(text.front()) != std::string_view::npos;
    }
    text = member.value.substr(1, member.value.size() - 2);
    if (text.find('\\') == std::string::npos) return true;
    Diagnostics unread;
    auto const node = yaml::read_json(make_source("", std::string(member.value)), unread);
    if (node) text = node->text;
    return node.has_value();
}

}  // namespace asterism::audit
