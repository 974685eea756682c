// SPDX-License-Identifier: GPL-3.0-or-later
// Touchstone files read back by the standard's rules, and used as a circuit would use them.
#include "exchange/touchstone.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <charconv>
#include <numbers>
#include <sstream>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "units/fault.h"

namespace touchstone_test {

using Matrix = Eigen::MatrixXcd;

struct File {
    std::map<std::string, std::string> keywords;  ///< version 2.0: "[number of ports]" and what stands behind
    std::string options;
    double reference = 50;
    std::vector<double> frequency;
    std::vector<Matrix> s;
};

/// The rules: "!" begins a comment; "#" the option line; "[" a keyword; the rest are numbers. Two ports stand as
/// 11 21 12 22, all else row by row; a matrix is over when its numbers are.
File read(const std::string& text, int ports) {
    File file;
    std::vector<double> numbers;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        line = line.substr(0, line.find('!'));
        if (line.empty()) continue;
        if (line.front() == '#') {
            EXPECT_TRUE(file.options.empty()) << "one option line";
            file.options = line;
        } else if (line.front() == '[') {
            const auto end = line.find(']');
            file.keywords[line.substr(0, end + 1)] = line.substr(std::min(line.size(), end + 2));
        } else {
            std::istringstream words(line);
            int count = 0;
            for (std::string word; words >> word; ++count) {
                double value = 0;
                const auto done = std::from_chars(word.data(), word.data() + word.size(), value);
                EXPECT_EQ(done.ptr, word.data() + word.size()) << word;
                numbers.push_back(value);
            }
            EXPECT_LE(count, 9) << "at most four pairs a line, and a frequency";
        }
    }
    const std::size_t block = 1 + 2 * static_cast<std::size_t>(ports * ports);
    EXPECT_EQ(numbers.size() % block, 0U);
    for (std::size_t at = 0; at + block <= numbers.size(); at += block) {
        file.frequency.push_back(numbers[at]);
        Matrix s(ports, ports);
        for (int k = 0; k < ports * ports; ++k) {
            const std::complex<double> value(numbers[at + 1 + 2 * static_cast<std::size_t>(k)],
                                             numbers[at + 2 + 2 * static_cast<std::size_t>(k)]);
            if (ports == 2)
                s(k % 2, k / 2) = value;
            else
                s(k / ports, k % ports) = value;
        }
        file.s.push_back(s);
    }
    return file;
}

struct Case {
    const char* file;
    const char* hookUp;
    int ports;
};

struct Opened {
    design::DesignPtr design;
    catalog::Catalog shop;
    explicit Opened(const char* name) : shop(exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"})) {
        const auto path = std::string(COILWRIGHT_SOURCE_DIR) + "/" + name;
        design = exchange::readDesign(exchange::readFile(path), path, shop).design;
    }
    [[nodiscard]] analysis::AnswerPtr answer(const char* hookUp, std::vector<double> at = {}) const {
        return analysis::answer(*design, shop, nullptr, {}, {hookUp, std::move(at), false});
    }
};

std::complex<double> impedance(const design::Branch& b, double f) {
    const double w = 2 * std::numbers::pi * f;
    std::complex<double> z(b.resistance.value, w * b.inductance.value);
    if (b.capacitance.value > 0) z += 1.0 / std::complex<double>(0, w * b.capacitance.value);
    return z;
}

/// The hook-up's own networks put on the file's ports: level at the observed port and impedance at the driven one.
struct InCircuit {
    double level = 0;
    std::complex<double> impedance;
};
InCircuit inCircuit(const design::HookUp& hookUp, const Matrix& s, double f) {
    const Eigen::Index n = s.rows();
    const Matrix one = Matrix::Identity(n, n);
    Matrix y = (one - s) * (one + s).inverse() / 50.0, legs = Matrix::Zero(n, n);
    Eigen::VectorXcd emf = Eigen::VectorXcd::Zero(n), observed = emf, driven = emf;
    std::complex<double> across = 0;
    Eigen::Index at = 0;
    for (const auto& use : hookUp.ports) {
        const bool two = use.earthing == design::Earthing::Balanced;
        Eigen::VectorXcd between = Eigen::VectorXcd::Zero(n);
        between(at) = 1;
        if (two) between(at + 1) = -1;
        const bool common = use.mode == design::Mode::Common;
        if (use.through)
            for (Eigen::Index k = at; k <= at + (two ? 1 : 0); ++k)
                legs(k, k) = 1.0 / (impedance(*use.through, f) * (two ? 0.5 : 1.0));
        std::complex<double> load = 0;
        for (const auto& b : use.across) load += 1.0 / impedance(b, f);
        y += load * between * between.transpose();
        if (use.role == design::Role::Drive) {
            driven = between / (two ? 2.0 : 1.0);
            emf = common ? Eigen::VectorXcd(between.cwiseAbs()) : Eigen::VectorXcd(driven);
            across = load;
        }
        if (use.role == design::Role::Observe) observed = between;
        at += two ? 2 : 1;
    }
    const Eigen::VectorXcd v = (y + legs).fullPivLu().solve(legs * emf);
    const Eigen::VectorXcd current = legs * (emf - v);
    const std::complex<double> drop = (driven.transpose() * v).value() / driven.cwiseAbs().maxCoeff();
    const std::complex<double> into = (driven.transpose() * current).value() - drop * across;
    return {20 * std::log10(std::abs((observed.transpose() * v).value())), drop / into};
}

class TouchstoneOf : public testing::TestWithParam<Case> {};

TEST_P(TouchstoneOf, IsReciprocalPassiveAndDoesInACircuitWhatTheUnitDoes) {
    const auto& tried = GetParam();
    const Opened opened(tried.file);
    const std::string name = "unit.s" + std::to_string(tried.ports) + "p";
    const auto file = read(exchange::touchstone(*opened.design, *opened.answer(tried.hookUp), name), tried.ports);
    EXPECT_EQ(file.options, "# Hz S RI R 50");
    ASSERT_EQ(file.frequency.size(), 201U);
    EXPECT_DOUBLE_EQ(file.frequency.front(), 10);
    EXPECT_DOUBLE_EQ(file.frequency.back(), 1e6);
    const auto own = opened.answer(tried.hookUp, file.frequency);
    const auto& hookUp = *design::hookUp(*opened.design, tried.hookUp);
    const auto* ohms = own->trace("impedance");
    ASSERT_NE(ohms, nullptr);
    const bool common = hookUp.ports.front().mode == design::Mode::Common;
    for (std::size_t k = 0; k < file.frequency.size(); ++k) {
        const Matrix& s = file.s[k];
        EXPECT_LT((s - s.transpose()).cwiseAbs().maxCoeff(), 1e-9) << file.frequency[k];
        EXPECT_LT(Eigen::JacobiSVD<Matrix>(s).singularValues()(0), 1 + 1e-9) << file.frequency[k];
        const auto used = inCircuit(hookUp, s, file.frequency[k]);
        EXPECT_NEAR(used.level, own->trace("response")->curves.front().y[k], common ? 0.01 : 0.001)
            << file.frequency[k];
        if (common) continue;  // no impedance between the terminals is meant
        EXPECT_NEAR(std::abs(used.impedance) / ohms->curves.front().y[k], 1, 1e-4) << file.frequency[k];
    }
}

INSTANTIATE_TEST_SUITE_P(HookUps, TouchstoneOf,
                         testing::Values(Case{"tests/references/open_1_shielded_step_up.coilwright", "normal", 3},
                                         Case{"tests/references/open_1_shielded_step_up.coilwright", "common mode", 3},
                                         Case{"tests/references/open_2_interleaved_line.coilwright", "normal", 2},
                                         Case{"demo-projects/line-unit/line-unit.coilwright", "series to series", 4},
                                         Case{"demo-projects/splitter/splitter.coilwright", "all loaded", 8}),
                         [](const auto& tried) { return "Case" + std::to_string(tried.index); });

TEST(Touchstone, VersionTwoSaysTheSameWithItsKeywords) {
    const Opened opened("tests/references/open_2_interleaved_line.coilwright");
    const auto answer = opened.answer("normal");
    const auto text = exchange::touchstone(*opened.design, *answer, "unit.ts");
    EXPECT_TRUE(text.starts_with("[Version] 2.0\n# Hz S RI\n"));
    const auto second = read(text, 2), first = read(exchange::touchstone(*opened.design, *answer, "unit.S2P"), 2);
    EXPECT_EQ(second.keywords.at("[Number of Ports]"), "2");
    EXPECT_EQ(second.keywords.at("[Two-Port Data Order]"), "21_12");
    EXPECT_EQ(second.keywords.at("[Number of Frequencies]"), std::to_string(second.frequency.size()));
    EXPECT_EQ(second.keywords.at("[Reference]"), "50 50");
    EXPECT_TRUE(second.keywords.contains("[Network Data]") && second.keywords.contains("[End]"));
    ASSERT_EQ(second.s.size(), first.s.size());
    for (std::size_t k = 0; k < first.s.size(); ++k) EXPECT_EQ(first.s[k], second.s[k]);
}

TEST(Touchstone, AnEndingThatDoesNotFitIsRefusedWithThePorts) {
    const Opened opened("tests/references/open_1_shielded_step_up.coilwright");
    const auto answer = opened.answer("normal");
    const auto said = [&](const std::string& name) -> std::string {
        try {
            return exchange::touchstone(*opened.design, *answer, name).substr(0, 10);
        } catch (const units::BadInput& bad) {
            return bad.what();
        }
    };
    const std::string allowed =
        "; allowed is .s3p, as hook-up normal has 3 ports (input: p+ against earth; input: p- against earth; output: "
        "s+ against gnd), or .ts.";
    EXPECT_EQ(said("unit.s2p"), "unit.s2p: found an ending for 2 ports" + allowed);
    EXPECT_EQ(said("unit.txt"), "unit.txt: found its ending" + allowed);
    EXPECT_EQ(said("unit"), "unit: found its ending" + allowed);
}

TEST(Touchstone, NothingOfTheCoilStandsInIt) {
    const Opened opened("tests/references/open_2_interleaved_line.coilwright");
    const auto text = exchange::touchstone(*opened.design, *opened.answer("normal"), "unit.s2p");
    EXPECT_EQ(text.find(opened.design->name), std::string::npos) << "the name tells the order of the sections";
}

}  // namespace touchstone_test
