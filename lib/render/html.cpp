// SPDX-License-Identifier: MIT
#include "render/html.h"

#include <algorithm>
#include <cstdint>

#include "render/escape.h"

namespace asterism {

std::string html_safe(std::string_view text) {
    std::string result;
    for (char const c : terminal_safe(text, true)) {
        switch (c) {
            case '&': result += "&amp;"; break;
            case '<': result += "&lt;"; break;
            case '>': result += "&gt;"; break;
            case '"': result += "&quot;"; break;
            case '\'': result += "&#39;"; break;
            default: result += c;
        }
    }
    return result;
}

std::string svg_address(std::string_view svg) {
    static constexpr auto digits =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string result = "data:image/svg+xml;base64,";
    for (std::size_t i = 0; i < svg.size(); i += 3) {
        std::uint32_t bits = 0;
        auto const bytes = std::min<std::size_t>(3, svg.size() - i);
        for (std::size_t k = 0; k < 3; ++k) {
            bits = bits << 8 | (k < bytes ? static_cast<unsigned char>(svg[i + k]) : 0u);
        }
        for (std::size_t k = 0; k < 4; ++k) {
            result += k <= bytes ? digits[bits >> (18 - 6 * k) & 63] : '=';
        }
    }
    return result;
}

void Markup::start(std::string_view tag, Attributes const& attributes) {
    out_ += "<" + std::string(tag);
    for (auto const& [name, value] : attributes) {
        out_ += " " + std::string(name) + "=\"" + html_safe(value) + "\"";
    }
    out_ += ">";
}

Markup& Markup::open(std::string_view tag, Attributes const& attributes) {
    start(tag, attributes);
    open_.emplace_back(tag);
    return *this;
}

Markup& Markup::close() {
    out_ += "</" + open_.back() + ">";
    open_.pop_back();
    return *this;
}

Markup& Markup::text(std::string_view text) {
    out_ += html_safe(text);
    return *this;
}

Markup& Markup::element(std::string_view tag, std::string_view content,
                        Attributes const& attributes) {
    return open(tag, attributes).text(content).close();
}

Markup& Markup::empty(std::string_view tag, Attributes const& attributes) {
    start(tag, attributes);
    return *this;
}

Markup& Markup::trusted(std::string_view markup) {
    out_ += markup;
    return *this;
}

Markup& Markup::new_line() {
    out_ += '\n';
    return *this;
}

std::string Markup::take() {
    while (!open_.empty()) close();
    return std::move(out_);
}

std::string html_page(Page const& page) {
    Markup m;
    m.trusted("<!DOCTYPE html>\n").open("html", {{"lang", "en-GB"}}).new_line();
    m.open("head").new_line();
    m.empty("meta", {{"charset", "utf-8"}}).new_line();
    m.empty("meta", {{"http-equiv", "Content-Security-Policy"},
                     {"content",
                      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; "
                      "base-uri 'none'; form-action 'none'"}});
    m.new_line();
    m.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
    m.new_line();
    m.empty("meta", {{"name", "color-scheme"}, {"content", "light dark"}}).new_line();
    m.element("title", page.title).new_line();
    m.open("style").trusted("\n" + page.style).close().new_line();
    m.close().new_line();
    m.open("body").new_line().trusted(page.body).new_line();
    return m.take() + "\n";
}

}  // namespace asterism
