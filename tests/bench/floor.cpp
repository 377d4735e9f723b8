// SPDX-License-Identifier: MIT
/// The floor: simdjson reading every value of every line, and nothing else. Prints lines a second
/// of processor time.
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include <simdjson.h>

namespace {

namespace od = simdjson::ondemand;

constexpr std::size_t batch_size = 256u << 10;

/// Visits everything below a value; the sum keeps the compiler from leaving it out.
std::size_t visit(od::value value) {
    std::size_t sum = 0;
    switch (value.type()) {
        case od::json_type::array:
            for (auto element : value.get_array()) sum += visit(element.value());
            return sum;
        case od::json_type::object:
            for (auto field : value.get_object()) {
                sum += std::string_view(field.unescaped_key()).size();
                sum += visit(field.value().value());
            }
            return sum;
        case od::json_type::string: return std::string_view(value.get_string()).size();
        default: return std::string_view(value.raw_json_token()).size();
    }
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    auto const text = simdjson::padded_string::load(argv[1]);
    if (text.error()) return 3;
    double const wanted = std::atof(argv[2]);
    od::parser parser;
    parser.threaded = false;
    std::size_t lines = 0, sum = 0;
    auto const start = std::clock();
    double seconds = 0;
    do {
        od::document_stream stream;
        if (parser.iterate_many(text.value_unsafe(), batch_size).get(stream)) return 3;
        for (auto document : stream) {
            for (auto field : document.get_object()) {
                sum += std::string_view(field.unescaped_key()).size();
                sum += visit(field.value().value());
            }
            ++lines;
        }
        seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    } while (seconds < wanted);
    std::printf("%.0f %zu %s\n", static_cast<double>(lines) / seconds, sum,
                simdjson::builtin_implementation()->name().c_str());
    return 0;
}
