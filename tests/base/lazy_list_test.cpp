// SPDX-License-Identifier: MIT
#include "base/lazy_list.h"

#include <algorithm>
#include <atomic>
#include <stdexcept>
#include <string>
#include <thread>

#include "testing.h"

using namespace asterism;

namespace {

/// "0", "1", "2" ...; counts how often each is made.
class Numerals final : public LazyList<std::string>::Maker {
public:
    explicit Numerals(std::size_t size) : Maker(size), made_(size) {}
    int made(std::size_t index) const { return made_[index]; }

private:
    std::string make(std::size_t index) const override {
        ++made_[index];
        if (index == 13) throw std::runtime_error("thirteen");
        return std::to_string(index);
    }

    mutable std::vector<std::atomic<int>> made_;
};

class Answer final : public Lazy<int>::Maker {
public:
    mutable int asked = 0;

private:
    int make() const override {
        if (++asked == 1) throw std::runtime_error("not yet");
        return 42;
    }
};

}  // namespace

TEST_CASE("an item is made when it is asked for, and once") {
    auto const maker = std::make_shared<Numerals const>(5);
    auto const list = LazyList<std::string>::deferred(maker);
    CHECK(list.size() == 5);
    CHECK_FALSE(list.empty());
    CHECK(maker->made(3) == 0);
    auto const* three = &list[3];
    CHECK(*three == "3");
    CHECK(&list[3] == three);
    CHECK(maker->made(3) == 1);
    CHECK(maker->made(2) == 0);
    CHECK(list.front() == "0");
    CHECK(list.back() == "4");
}

TEST_CASE("copies share what was made") {
    auto const maker = std::make_shared<Numerals const>(5);
    auto const list = LazyList<std::string>::deferred(maker);
    auto const copy = list;
    CHECK(&copy[1] == &list[1]);
    CHECK(maker->made(1) == 1);
}

TEST_CASE("the iterators are those of a random access range") {
    auto const list = LazyList<std::string>::deferred(std::make_shared<Numerals const>(10));
    CHECK(std::vector<std::string>(list.begin(), list.end()).size() == 10);
    CHECK(std::lower_bound(list.begin(), list.end(), "7") - list.begin() == 7);
    CHECK(*(list.end() - 1) == "9");
    CHECK(list.begin()[4] == "4");
    CHECK((list.begin() + 2)->size() == 1);
    CHECK(list.begin() < list.end());
    CHECK(std::find(list.begin(), list.end(), "x") == list.end());
}

TEST_CASE("whoever changes a list has all items to himself") {
    auto const shared = LazyList<std::string>::deferred(std::make_shared<Numerals const>(4));
    auto mine = shared;
    mine[1] = "one";
    mine.push_back("more");
    CHECK(std::vector<std::string>(mine.begin(), mine.end()) ==
          std::vector<std::string>{"0", "one", "2", "3", "more"});
    CHECK(shared[1] == "1");
    CHECK(shared.size() == 4);
}

TEST_CASE("a list of ready items is a vector") {
    LazyList<int> list{3, 1, 2};
    std::sort(list.begin(), list.end());
    CHECK(list.front() == 1);
    CHECK(list.back() == 3);
    CHECK(LazyList<int>().empty());
    CHECK(LazyList<int>(std::vector<int>{5})[0] == 5);
}

TEST_CASE("an item that cannot be made is asked for again") {
    auto const maker = std::make_shared<Numerals const>(20);
    auto const list = LazyList<std::string>::deferred(maker);
    CHECK_THROWS_AS(list[13], std::runtime_error);
    CHECK_THROWS_AS(list[13], std::runtime_error);
    CHECK(maker->made(13) == 2);
    CHECK(list[14] == "14");
}

TEST_CASE("threads that ask at once are given the same item") {
    auto const list = LazyList<std::string>::deferred(std::make_shared<Numerals const>(10));
    std::vector<std::string const*> seen(8);
    std::vector<std::thread> threads;
    for (auto& place : seen) threads.emplace_back([&] { place = &list[7]; });
    for (auto& thread : threads) thread.join();
    CHECK(*seen.front() == "7");
    for (auto const* place : seen) CHECK(place == seen.front());
}

TEST_CASE("a lazy thing is ready, deferred, or a default one") {
    CHECK(*Lazy<int>() == 0);
    CHECK(*Lazy<int>(7) == 7);
    CHECK(Lazy<std::string>(std::string("seven"))->size() == 5);
    auto const maker = std::make_shared<Answer const>();
    auto const answer = Lazy<int>::deferred(maker);
    CHECK(maker->asked == 0);
    CHECK_THROWS_AS(*answer, std::runtime_error);
    CHECK(*answer == 42);
    auto const copy = answer;
    CHECK(&*copy == &*answer);
    CHECK(maker->asked == 2);
}
