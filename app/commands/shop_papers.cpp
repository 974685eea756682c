// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/shop_papers.h"

#include <optional>

#include "commands/learned.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/value_text.h"
#include "exchange/write_file.h"
#include "papers/bill.h"
#include "papers/datasheet.h"
#include "papers/test_plan.h"
#include "papers/traveller.h"
#include "papers/winding_sheet.h"
#include "shop/paper_content.h"
#include "units/fault.h"

namespace commands {

namespace {

bool endsWith(const std::string& file, const std::string& ending) {
    return file.size() > ending.size() && file.compare(file.size() - ending.size(), ending.size(), ending) == 0;
}

/// Writes one paper the ways it can be written.
struct PaperFile {
    const Arguments& arguments;
    papers::Format format;
    std::string design;  ///< the text of the design file

    template <class Content, class Paint>
    std::string write(const std::string& option, const Content& content, const Paint& paint,
                      const std::string* csv = nullptr) const {
        const std::string file = arguments.option(option);
        if (endsWith(file, ".pdf")) {
            const QByteArray bytes = paint(content, format, design);
            exchange::writeFile(file, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
        } else if (endsWith(file, ".json")) {
            exchange::writeFile(file, exchange::valueText(shop::contentOf(content)));
        } else if (csv != nullptr && endsWith(file, ".csv")) {
            exchange::writeFile(file, *csv);
        } else {
            throw units::BadInput(units::Fault{"command line: " + option, '"' + file + '"',
                                               csv != nullptr ? "F.csv, F.pdf or F.json" : "F.pdf or F.json"});
        }
        return file + '\n';
    }
};

std::string writeBill(const PaperFile& paper, const Opened& opened, const shop::Issue& issue) {
    const std::string file = paper.arguments.option("--prices");
    std::optional<shop::Prices> prices;
    if (!file.empty()) prices = shop::readPrices(exchange::readFile(file), file);
    const shop::Bill bill = shop::bill(*opened.design, opened.shop, issue, prices ? &*prices : nullptr);
    const std::string csv = shop::billCsv(bill);
    return paper.write("--bill", bill, papers::paintedBill, &csv);
}

/// The plan as a paper or its content, and its limits as a table.
std::string writeTestPlan(const PaperFile& paper, const Opened& opened, const shop::Issue& issue) {
    const Arguments& arguments = paper.arguments;
    const std::string limits = arguments.option("--limits");
    if (!limits.empty() && !endsWith(limits, ".csv"))
        throw units::BadInput(units::Fault{"command line: --limits", '"' + limits + '"', "F.csv"});
    const design::Fixture fixture = fixtureAsked(arguments);
    const design::Design& design = *opened.design;
    const auto answer = analysis::answer(design, opened.shop);
    const auto prediction = shop::planPrediction(design, answer, opened.shop, shopTolerances(places()), fixture);
    const shop::TestPlan plan = shop::testPlan(design, *answer, prediction, opened.shop, fixture, issue);
    std::string written;
    if (!arguments.option("--test-plan").empty()) written += paper.write("--test-plan", plan, papers::paintedTestPlan);
    if (!limits.empty()) {
        exchange::writeFile(limits, shop::limitsCsv(plan));
        written += limits + '\n';
    }
    return written;
}

}  // namespace

papers::Format formatOf(const std::string& name) {
    if (name.empty() || name == "a4") return papers::Format::A4;
    if (name == "letter") return papers::Format::Letter;
    throw units::BadInput(units::Fault{"command line: --paper", '"' + name + '"', "a4 or letter"});
}

const std::set<std::string>& shopPaperOptions() {
    static const std::set<std::string> all{"--winding-sheet", "--traveller", "--bill", "--test-plan", "--limits"};
    return all;
}

bool asksForShopPapers(const Arguments& arguments) {
    bool asks = false;
    for (const std::string& option : shopPaperOptions()) asks = asks || !arguments.option(option).empty();
    if (arguments.option("--bill").empty() && !arguments.option("--prices").empty())
        throw units::BadInput(
            units::Fault{"command line: --prices", "no bill to write", "it beside --bill F.csv, F.pdf or F.json"});
    if (arguments.option("--test-plan").empty() && arguments.option("--limits").empty() &&
        !arguments.option("--fixture").empty())
        throw units::BadInput(units::Fault{"command line: --fixture", "no test plan to write",
                                           "it beside --test-plan F.pdf or F.json, or --limits F.csv"});
    return asks;
}

std::string writeShopPapers(const Arguments& arguments, const Opened& opened, papers::Format format) {
    const shop::Issue issue{papers::paperDate(), opened.digest};
    const PaperFile paper{arguments, format, exchange::writeDesign(*opened.design, opened.shop)};
    std::string written;
    if (!arguments.option("--winding-sheet").empty())
        written += paper.write("--winding-sheet", shop::windingSheet(*opened.design, opened.shop, issue),
                               papers::paintedWindingSheet);
    if (!arguments.option("--traveller").empty())
        written +=
            paper.write("--traveller", shop::traveller(*opened.design, opened.shop, issue), papers::paintedTraveller);
    if (!arguments.option("--bill").empty()) written += writeBill(paper, opened, issue);
    if (!arguments.option("--test-plan").empty() || !arguments.option("--limits").empty())
        written += writeTestPlan(paper, opened, issue);
    return written;
}

}  // namespace commands
