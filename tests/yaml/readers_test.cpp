// SPDX-License-Identifier: MIT
/// Readers of single values and of field tables.
#include "trees.h"
#include "yaml/table.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// Reads the value of `v: <text>` and says what was reported.
template <class T>
Reading read_value(yaml::Reader<T> const& reader, std::string const& text, T& target) {
    auto reading = yaml_text("v: " + text + "\n");
    REQUIRE(reading.node);
    reader.read(*reading.node->find("v"), target, reading.diagnostics);
    return reading;
}

enum class Colour { red, green };

yaml::Reader<Colour> colour() {
    return yaml::choice<Colour>({{"red", Colour::red}, {"green", Colour::green}});
}

struct Thing {
    Word id;
    int count = 7;
    std::vector<std::string> tags;
    std::optional<Colour> colour;
};

yaml::Table<Thing> thing_table() {
    yaml::Table<Thing> table("thing");
    table.required("thing", &Thing::id, yaml::word("thing"), "its id")
        .required("count", &Thing::count, yaml::integer(0, 9), "how many")
        .optional("tags", &Thing::tags, yaml::list_of(yaml::text()), "words")
        .optional("colour", &Thing::colour, yaml::maybe(colour()), "its colour");
    return table;
}

Reading read_thing(std::string text, Thing& thing) {
    auto reading = yaml_text(std::move(text));
    REQUIRE(reading.node);
    thing_table().read(*reading.node, thing, reading.diagnostics);
    return reading;
}

}  // namespace

TEST_CASE("only unquoted true and false are booleans") {
    bool read = false;
    CHECK(read_value(yaml::boolean(), "true", read).all().empty());
    CHECK(read);
    CHECK(read_value(yaml::boolean(), "false", read).all().empty());
    CHECK_FALSE(read);
    for (std::string const text : {"yes", "no", "on", "off", "y", "True", "TRUE", "1", "0",
                                   "'true'", "\"false\"", "~", "[true]", "{}"}) {
        CAPTURE(text);
        bool target = true;
        CHECK(read_value(yaml::boolean(), text, target).reported() ==
              Reported{"wrong-form " + std::string(text == "~" ? "1:1" : "1:4")});
        CHECK(target);
    }
}

TEST_CASE("whole numbers are decimal and within bounds") {
    int target = -1;
    CHECK(read_value(yaml::integer(0, 50), "040", target).all().empty());
    CHECK(target == 40);
    CHECK(read_value(yaml::integer(0, 50), "0", target).all().empty());
    CHECK(read_value(yaml::integer(0, 50), "50", target).all().empty());
    for (std::string const text :
         {"51", "-1", "0x10", "1e1", "1.0", "'5'", "five", ".nan", "1_0", "[1]", "0o7"}) {
        CAPTURE(text);
        auto const reading = read_value(yaml::integer(0, 50), text, target);
        CHECK(reading.reported() == Reported{"wrong-form 1:4"});
        CHECK(reading.all().at(0).message.find("from 0 to 50") != std::string::npos);
        CHECK(target == 50);
    }
}

TEST_CASE("numbers are finite decimals") {
    double target = -1;
    CHECK(read_value(yaml::number(), "031.50", target).all().empty());
    CHECK(target == 31.5);
    for (std::string const text :
         {".nan", ".inf", "-.inf", "1e5", "0x10", "+3", ".5", "5.", "'3'", "1,5", "x", "{a: 1}"}) {
        CAPTURE(text);
        CHECK(read_value(yaml::number(), text, target).reported() == Reported{"wrong-form 1:4"});
        CHECK(target == 31.5);
    }
}

TEST_CASE("a word is a text with its place; a text is trimmed") {
    Word word;
    CHECK(read_value(yaml::word(), "low-set ears", word).all().empty());
    CHECK(word.text == "low-set ears");
    CHECK(covered(word.span) == "low-set ears");
    std::string text;
    CHECK(read_value(yaml::text(), "'  padded  '", text).all().empty());
    CHECK(text == "padded");
    for (std::string const wrong : {"[a]", "{a: b}", "''"}) {
        CAPTURE(wrong);
        CHECK(read_value(yaml::word(), wrong, word).reported() == Reported{"wrong-form 1:4"});
        CHECK(read_value(yaml::text(), wrong, text).reported() == Reported{"wrong-form 1:4"});
    }
    CHECK(read_value(yaml::word(), "", word).reported() == Reported{"wrong-form 1:1"});
    CHECK(word.text == "low-set ears");
}

TEST_CASE("a choice names the nearest word, or all of them") {
    auto target = Colour::red;
    CHECK(read_value(colour(), "green", target).all().empty());
    CHECK(target == Colour::green);
    auto const slip = read_value(colour(), "greeen", target).all();
    REQUIRE(slip.size() == 1);
    CHECK(slip[0].code == "unknown-value");
    CHECK(slip[0].message == "unknown value `greeen`");
    CHECK(slip[0].help == "did you mean `green`");
    CHECK(read_value(colour(), "purple", target).all().at(0).help == "accepted: red, green");
    CHECK(read_value(colour(), "[red]", target).reported() == Reported{"wrong-form 1:4"});
    CHECK(target == Colour::green);
}

TEST_CASE("a list reads every item even after one was refused") {
    std::vector<int> target;
    auto const reading = read_value(yaml::list_of(yaml::integer(0, 9)), "[1, x, 3, 44]", target);
    CHECK(reading.reported() == Reported{"wrong-form 1:8", "wrong-form 1:14"});
    CHECK(target == std::vector<int>{1, 0, 3, 0});
}

TEST_CASE("a list is asked for where there is none") {
    std::vector<int> target{5};
    auto const all = read_value(yaml::list_of(yaml::integer(0, 9)), "1", target).all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].message == "expected a list, found `1`");
    CHECK(target == std::vector<int>{5});
    auto const map = read_value(yaml::list_of(yaml::integer(0, 9)), "{a: 1}", target).all();
    CHECK(map.at(0).message == "expected a list, found a map");
    auto const none = read_value(yaml::list_of(yaml::integer(0, 9)), "", target).all();
    CHECK(none.at(0).message == "expected a list, found nothing");
}

TEST_CASE("one value or a list of them") {
    std::vector<int> one, many, none;
    CHECK(read_value(yaml::one_or_more(yaml::integer(0, 9)), "4", one).all().empty());
    CHECK(one == std::vector<int>{4});
    CHECK(read_value(yaml::one_or_more(yaml::integer(0, 9)), "[4, 5]", many).all().empty());
    CHECK(many == std::vector<int>{4, 5});
    CHECK(read_value(yaml::one_or_more(yaml::integer(0, 9)), "x", none).reported() ==
          Reported{"wrong-form 1:4"});
}

TEST_CASE("an optional is engaged only by a well-formed value") {
    std::optional<Colour> target;
    CHECK(read_value(yaml::maybe(colour()), "blue", target).reported() ==
          Reported{"unknown-value 1:4"});
    CHECK_FALSE(target);
    CHECK(read_value(yaml::maybe(colour()), "red", target).all().empty());
    CHECK(target == Colour::red);
}

TEST_CASE("a raw value is kept as it stands") {
    yaml::Node target;
    CHECK(read_value(yaml::raw(), "{a: [1, 'x']}", target).all().empty());
    CHECK(yaml::to_text(target) == "{a: [1, 'x']}");
}

TEST_CASE("a table reads its fields") {
    Thing thing;
    CHECK(read_thing("thing: x\ncount: 3\ntags: [a, b]\ncolour: green\n", thing).all().empty());
    CHECK(thing.id.text == "x");
    CHECK(thing.count == 3);
    CHECK(thing.tags == std::vector<std::string>{"a", "b"});
    CHECK(thing.colour == Colour::green);
}

TEST_CASE("a missing key is told at the map, each one") {
    Thing thing;
    auto const all = read_thing("tags: []\n", thing).all();
    REQUIRE(all.size() == 2);
    CHECK(all[0].code == "missing-key");
    CHECK(all[0].message == "the thing lacks the key `count`");
    CHECK(all[1].message == "the thing lacks the key `thing`");
    CHECK(all[0].span.place() == "t.yaml:1:1");
    CHECK(thing.count == 7);
}

TEST_CASE("an unknown key is told with the nearest") {
    Thing thing;
    auto const all = read_thing("thing: x\ncount: 1\ncolor: red\n", thing).all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].code == "unknown-key");
    CHECK(all[0].message == "unknown key `color`");
    CHECK(all[0].help == "did you mean `colour`");
    CHECK(all[0].span.place() == "t.yaml:3:1");
}

TEST_CASE("an unknown key far from all names those accepted") {
    Thing thing;
    auto const all = read_thing("thing: x\ncount: 1\nzebra: 1\n", thing).all();
    CHECK(all.at(0).help == "accepted: thing, count, tags, colour");
}

TEST_CASE("keys are case-sensitive and values after a bad one are read") {
    Thing thing;
    auto const reading = read_thing("Thing: x\ncount: many\ntags: [a]\n", thing);
    CHECK(reading.reported() == Reported{"unknown-key 1:1", "missing-key 1:1", "wrong-form 2:8"});
    CHECK(thing.tags == std::vector<std::string>{"a"});
}

TEST_CASE("a table wants a map") {
    Thing thing;
    auto const all = read_thing("- thing: x\n", thing).all();
    REQUIRE(all.size() == 1);
    CHECK(all[0].message == "expected a map of the thing's fields, found a list");
}

TEST_CASE("a table describes itself") {
    auto const shape = thing_table().shape();
    CHECK(shape.kind == yaml::Shape::Kind::record);
    REQUIRE(shape.fields.size() == 4);
    CHECK(shape.fields[0].name == "thing");
    CHECK(shape.fields[0].required);
    CHECK(shape.fields[0].doc == "its id");
    CHECK(shape.fields[0].shape.refers_to == "thing");
    CHECK(shape.fields[1].shape.kind == yaml::Shape::Kind::integer);
    CHECK_FALSE(shape.fields[2].required);
    CHECK(shape.fields[2].shape.kind == yaml::Shape::Kind::list);
    REQUIRE(shape.fields[2].shape.item);
    CHECK(shape.fields[2].shape.item->kind == yaml::Shape::Kind::text);
    CHECK(shape.fields[3].shape.kind == yaml::Shape::Kind::choice);
    CHECK(shape.fields[3].shape.choices == std::vector<std::string>{"red", "green"});
}

TEST_CASE("the reader of a table reads lists of records and describes them") {
    auto const reader = yaml::list_of(thing_table().reader());
    std::vector<Thing> things;
    auto const reading =
        read_value(reader, "[{thing: a, count: 1}, {thing: b}, {thing: c, count: 2}]", things);
    CHECK(reading.reported() == Reported{"missing-key 1:27"});
    REQUIRE(things.size() == 3);
    CHECK(things[2].count == 2);
    CHECK(reader.shape.item->kind == yaml::Shape::Kind::record);
    CHECK(yaml::one_or_more(yaml::number()).shape.alternatives.size() == 2);
    CHECK(yaml::list_of_conditions().shape.item->refers_to == "condition");
}
