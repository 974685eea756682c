// SPDX-License-Identifier: GPL-3.0-or-later
// Every row of faults.json makes the sample design bad in one way, as a JSON patch (RFC 6902), and says every sentence
// that follows, whole.
#include <gtest/gtest.h>

#include <cctype>
#include <fstream>
#include <sstream>

#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "json/text.h"
#include "units/fault.h"

namespace fault_sentences_test {

const std::string folder = COILWRIGHT_SOURCE_DIR "/tests/faults/";

struct Row {
    std::string name;
    json::Value patch;
    std::vector<std::string> says;
};
void PrintTo(const Row& row, std::ostream* out) {
    *out << row.name;
}

std::vector<Row> rows() {
    std::vector<Row> all;
    for (const json::Value& row : json::read(exchange::readFile(folder + "faults.json"), "faults.json"))
        all.push_back({row["name"], row["patch"], row["says"].get<std::vector<std::string>>()});
    return all;
}

std::string caseName(const testing::TestParamInfo<Row>& info) {
    std::string name;
    for (const char c : info.param.name) name += std::isalnum(static_cast<unsigned char>(c)) ? c : '_';
    return name;
}

class FaultSentences : public testing::TestWithParam<Row> {};

TEST_P(FaultSentences, AreAllSaidWhole) {
    const json::Value sample = json::read(exchange::readFile(folder + "sample.coilwright"), "sample.coilwright");
    const std::string bad = json::write(sample.patch(GetParam().patch));
    try {
        const auto opened = exchange::readDesign(bad, "sample.coilwright", {});
        FAIL() << "opened as " << opened.design->name;
    } catch (const units::BadInput& input) {
        std::vector<std::string> said;
        for (const units::Fault& fault : input.faults) said.push_back(units::sentence(fault));
        EXPECT_EQ(said, GetParam().says);
        EXPECT_EQ(std::string(input.what()), GetParam().says.at(0));
    }
}

INSTANTIATE_TEST_SUITE_P(Sample, FaultSentences, testing::ValuesIn(rows()), caseName);

TEST(FaultSample, IsItselfWithoutFault) {
    const std::string text = exchange::readFile(folder + "sample.coilwright");
    const auto opened = exchange::readDesign(text, "sample.coilwright", {});
    EXPECT_TRUE(opened.notes.empty());
    EXPECT_EQ(exchange::writeDesign(*opened.design, {}), text);
}

}  // namespace fault_sentences_test
