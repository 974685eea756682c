// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <limits>
#include <random>

#include "json/digest.h"
#include "json/text.h"

namespace write_test {

using json::Value;

TEST(WriteJson, IsCanonical) {
    const Value value = Value::parse(R"({"z":1,"a":{},"e":[],"n":[1,2.5,1e-7],"m":[[0,1],[2,3]],"s":["x","y"],
        "o":[{"k":null}],"t":"µ \" \n é","f":true,"d":100.0,"big":1e15,"neg":-0.0})");
    EXPECT_EQ(json::write(value), R"({
  "z": 1,
  "a": {},
  "e": [],
  "n": [1, 2.5, 1e-7],
  "m": [
    [0, 1],
    [2, 3]
  ],
  "s": [
    "x",
    "y"
  ],
  "o": [
    {
      "k": null
    }
  ],
  "t": "µ \" \n é",
  "f": true,
  "d": 100,
  "big": 1e15,
  "neg": -0.0
}
)");
    EXPECT_EQ(json::write(nullptr), "null\n");
    EXPECT_EQ(json::write("\xFF"), "\"\uFFFD\"\n");
}

TEST(WriteJson, NumbersShareALineUpToColumn100) {
    for (std::size_t count = 1; count < 60; ++count) {
        Value value;
        value["numbers"] = std::vector<int>(count, 10);
        const std::string text = json::write(value);
        // two of indent, "numbers": and a space, brackets, "10" and ", " between, and room for a comma
        const bool fits = 2 + 11 + 2 + 2 * count + 2 * (count - 1) + 1 <= 100;
        EXPECT_EQ(std::count(text.begin(), text.end(), '\n') == 3, fits) << count;
    }
}

TEST(WriteJson, ReadsBackTheSameAndWritesTheSameAgain) {
    std::mt19937_64 chance(5);
    for (int i = 0; i < 20000; ++i) {
        const auto number = std::bit_cast<double>(chance());
        if (!std::isfinite(number)) continue;
        const std::string text = json::write(Value(number));
        const auto back = json::read(text, "d").get<double>();
        ASSERT_EQ(std::bit_cast<std::uint64_t>(back), std::bit_cast<std::uint64_t>(number)) << text;
        ASSERT_EQ(json::write(json::read(text, "d")), text);
    }
}

TEST(WriteJson, RefusesWhatIsNotFinite) {
    EXPECT_THROW((void)json::write(Value(std::numeric_limits<double>::infinity())), std::logic_error);
    EXPECT_THROW((void)json::write(Value(std::numeric_limits<double>::quiet_NaN())), std::logic_error);
}

// Source: FIPS 180-4's published examples for SHA-256 (one block, two blocks) and the million letters "a";
// status: from memory, and compared with the outputs of coreutils' sha256sum.
TEST(Digest, AgreesWithThePublishedExamples) {
    EXPECT_EQ(json::digest("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(json::digest(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    EXPECT_EQ(json::digest("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    EXPECT_EQ(json::digest(std::string(1'000'000, 'a')),
              "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST(Digest, PadsAtTheEdgeOfABlock) {
    EXPECT_EQ(json::digest(std::string(55, 'a')), "9f4390f8d30c2dd92ec9f095b65e2b9ae9b0a925a5258e241c9f1e910f734318");
    EXPECT_EQ(json::digest(std::string(56, 'a')), "b35439a4ac6f0948b6d6f9e3c6af0f5f590ce20f1bde7090ef7970686ec6738a");
    EXPECT_EQ(json::digest(std::string(63, 'a')), "7d3e74a05d7db15bce4ad9ec0658ea98e3f06eeecf16b4c6fff2da457ddc2f34");
    EXPECT_EQ(json::digest(std::string(64, 'a')), "ffe054fe7ae0cb6dc65c3af9b61d5209f439851db43d0ba5997337df154668eb");
    EXPECT_EQ(json::digest(std::string(119, 'a')), "31eba51c313a5c08226adf18d4a359cfdfd8d2e816b13f4af952f7ea6584dcfb");
    EXPECT_EQ(json::digest(std::string(120, 'a')), "2f3d335432c70b580af0e8e1b3674a7c020d683aa5f73aaaedfdc55af904c21c");
}

}  // namespace write_test
