// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/datasheet_pages.h"

#include <algorithm>

#include "papers/chart_painter.h"
#include "papers/drawings.h"
#include "papers/missing_characters.h"
#include "papers/paper_text.h"
#include "papers/tables.h"
#include "papers/title_block.h"

namespace papers {

namespace {

constexpr double columnGap = 8, blockGap = 3.5, chartLeast = 42;
constexpr double outlineMost = 82, outlineLeast = 56, outlineUsual = 68, outlineHead = 9;  // mm
constexpr Type noteType{8.5, false, {}, Qt::AlignLeft};
constexpr Type smallType{7.5, false, {}, Qt::AlignLeft};

class DatasheetPages {
public:
    DatasheetPages(Paper& paper, const shop::Datasheet& sheet, int pages)
        : paper_(paper), sheet_(sheet), pages_(pages) {}

    int paint() {
        const bool crowded = isCrowded();
        firstPage(crowded);
        nextPage();
        if (crowded) drawings();
        secondPage();
        if (agreedFrom_ < sheet_.agreed.size() || typicalFrom_ < sheet_.typical.size()) continued();
        titleBlock();
        return paper_.page();
    }

private:
    [[nodiscard]] std::string say(const char* phrase) const { return sheet_.manner.say()(phrase); }
    [[nodiscard]] QString words(const char* phrase) const { return qt(say(phrase)); }
    [[nodiscard]] QRectF body() const { return paper_.content().adjusted(0, 0, 0, -footHeight - 3); }
    void nextPage() {
        titleBlock();
        paper_.newPage();
    }

    void titleBlock() {
        paintTitleBlock(paper_,
                        {say("Datasheet"), sheet_.title, sheet_.partNumber, sheet_.revision, sheet_.date, sheet_.digest,
                         sheet_.manner},
                        pages_);
    }

    /// The head of the first page; returns where the body begins.
    double head() {
        const QRectF all = paper_.content();
        const Type name{14, true, {}, Qt::AlignLeft};
        const QString part = qt(sheet_.partNumber);
        const double partWidth = part.isEmpty() ? 0 : std::min(60.0, paper_.width(part, name) + 4);
        double y = all.top();
        paper_.text({all.right() - partWidth, y, partWidth, Paper::lineHeight(name)}, part,
                    {14, true, Paper::accent(), Qt::AlignRight});
        y += paper_.paragraph({all.left(), y, all.width() - partWidth, 20}, qt(sheet_.title), name, 3);
        if (!sheet_.use.empty())
            y += paper_.paragraph({all.left(), y, all.width(), 10}, qt(sheet_.use),
                                  {9, false, Paper::muted(), Qt::AlignLeft}, 2);
        paper_.line({all.left(), y + 1.5}, {all.right(), y + 1.5}, 0.6, Paper::accent());
        return y + 5;
    }

    [[nodiscard]] double tablesHeight(double width, const Setting& setting) const {
        double height = 5.8 + paper_.paragraphHeight(width, qt(sheet_.conditions), smallType) + 1 +
                        valuesHeight(paper_, width, sheet_.typical, setting);
        if (!sheet_.agreed.empty()) height += 5.8 + blockGap + valuesHeight(paper_, width, sheet_.agreed, setting);
        return height;
    }

    /// Whether pinout and circuit of many windings need more than the column above the outline.
    [[nodiscard]] bool isCrowded() const {
        constexpr double pageHead = 25, headings = 12;
        const double pinout = pinoutHeight(sheet_.pinout);
        // The outline may be as low as it is ever drawn there.
        return pageHead + headings + pinout + blockGap + schematicRoom(sheet_.schematic) + outlineLeast + outlineHead >
               body().height();
    }
    /// Circuit and outline on a page of their own.
    void drawings() {
        const QRectF all = body();
        double y = paintHeading(paper_, all, all.top(), words("Circuit"));
        const bool outlined = sheet_.outline.width > 0;
        const double least = outlined ? outlineUsual + outlineHead + 3 : 0;
        const double room = std::min(std::max(60.0, schematicRoom(sheet_.schematic)), all.bottom() - y - least);
        paintSchematic(paper_, {all.left(), y, all.width(), room}, sheet_.schematic, words("core"));
        y += room + 3;
        if (outlined) {
            y = paintHeading(paper_, all, y, words("Outline and pins"));
            paintOutline(paper_, {all.left(), y, all.width(), std::min(outlineMost, all.bottom() - y)}, sheet_.outline,
                         sheet_.manner);
        }
        nextPage();
    }
    /// `crowded`: circuit and outline stand elsewhere.
    void firstPage(bool crowded) {
        const QRectF all = body();
        const double top = head();
        const double half = (all.width() - columnGap) / 2;
        const bool outlined = !crowded && sheet_.outline.width > 0;
        // Long tables are set tighter first, then take room from the outline.
        const auto rest = [&](const Setting& setting) {
            return all.bottom() - top - tablesHeight(half + 2, setting) - outlineHead - 1;
        };
        const Setting setting = !outlined || rest(usual) >= outlineUsual ? usual : tight;
        const double outline = outlined ? std::clamp(rest(setting), outlineLeast, outlineMost) : 0;
        const double bottom = all.bottom() - (outlined ? outline + outlineHead : 0);
        const QRectF left(all.left(), top, half - 2, bottom - top);
        const QRectF right(left.right() + columnGap, top, half + 2, bottom - top);
        leftColumn(left, !crowded);
        rightColumn(right, setting);
        if (!outlined) return;
        const double at = paintHeading(paper_, all, bottom + 3, words("Outline and pins"));
        paintOutline(paper_, {all.left(), at, all.width(), all.bottom() - at}, sheet_.outline, sheet_.manner);
    }
    void leftColumn(const QRectF& column, bool circuit) {
        double y = paintHeading(paper_, column, column.top(), words("Pinout"));
        y = paintPinout(paper_, column, y, sheet_.pinout) + blockGap;
        if (!circuit) return;
        y = paintHeading(paper_, column, y, words("Circuit"));
        paintSchematic(paper_, {column.left(), y, column.width(), std::max(30.0, column.bottom() - y)},
                       sheet_.schematic, words("core"));
    }
    void rightColumn(const QRectF& column, const Setting& setting) {
        double y = column.top();
        if (!sheet_.agreed.empty()) {
            y = paintHeading(paper_, column, y, words("Agreed limits"));
            agreedFrom_ = paintValues(paper_, column, y, column.bottom(), sheet_.agreed, 0, setting);
            y += blockGap;
        }
        const double conditions = paper_.paragraphHeight(column.width(), qt(sheet_.conditions), smallType);
        if (y + 5.8 + conditions + 10 > column.bottom()) return;
        y = paintHeading(paper_, column, y, words("Typical values (predicted)"));
        y += paper_.paragraph({column.left(), y, column.width(), 0}, qt(sheet_.conditions),
                              {smallType.size, false, Paper::muted(), Qt::AlignLeft}) +
             1;
        typicalFrom_ = paintValues(paper_, column, y, column.bottom(), sheet_.typical, 0, setting);
    }
    void continued() {
        const QRectF all = body();
        const QRectF column = all.adjusted(0, 0, -all.width() / 3, 0);
        const double half = all.top() + all.height() / 2;
        double y = below_ + blockGap;
        if (y > half) {
            nextPage();
            y = all.top();
        }
        if (agreedFrom_ < sheet_.agreed.size()) {
            y = paintHeading(paper_, column, y, words("Agreed limits, continued"));
            paintValues(paper_, column, y, all.bottom(), sheet_.agreed, agreedFrom_, tight);
            y += blockGap;
        }
        if (typicalFrom_ >= sheet_.typical.size()) return;
        y = paintHeading(paper_, column, y, words("Typical values (predicted), continued"));
        paintValues(paper_, column, y, all.bottom(), sheet_.typical, typicalFrom_, tight);
    }

    using Block = std::pair<std::string, std::vector<std::string>>;
    [[nodiscard]] double blockHeight(const Block& block, double width) const {
        double height = 5.2 + 1.5;
        for (const std::string& one : block.second)
            height += paper_.paragraphHeight(width - 3, qt(one), noteType) + 0.6;
        return height;
    }
    /// How many blocks stand in the left column, and how high the higher column then is.
    [[nodiscard]] std::pair<std::size_t, double> balance(const std::vector<Block>& blocks, double width) const {
        double all = 0, left = 0;
        for (const Block& block : blocks) all += blockHeight(block, width);
        std::pair<std::size_t, double> best{0, all};
        for (std::size_t k = 0; k < blocks.size(); ++k) {
            left += blockHeight(blocks[k], width);
            if (const double high = std::max(left, all - left); high < best.second) best = {k + 1, high};
        }
        return best;
    }
    /// Charts, and below them the notes; these go to a page of their own where the charts would be too low.
    void secondPage() {
        const QRectF all = body();
        const double half = (all.width() - columnGap) / 2;
        blocks_ = sheet_.notes;
        if (const std::string missing = missingWords(); !missing.empty()) blocks_.back().second.push_back(missing);
        const auto [split, needed] = balance(blocks_, half);
        const auto count = static_cast<double>(std::max<std::size_t>(1, sheet_.charts.size()));
        const bool together = (all.height() - needed) / count >= chartLeast;
        const double each = std::min(72.0, (all.height() - (together ? needed : 0)) / count);
        double y = all.top();
        for (const shop::Chart& chart : sheet_.charts) {
            paintChart(paper_, {all.left(), y, all.width(), each - 4}, chart, sheet_.manner.say());
            y += each;
        }
        if (!together) {
            nextPage();
            y = all.top();
        }
        notes(y, split);
        below_ = together ? all.bottom() : y + needed;
    }
    void notes(double y, std::size_t split) {
        const QRectF all = body();
        const double half = (all.width() - columnGap) / 2;
        for (std::size_t k = 0; k < blocks_.size(); ++k) {
            const QRectF column(k < split ? all.left() : all.left() + half + columnGap, y, half, 0);
            double at = y;
            for (std::size_t before = k < split ? 0 : split; before < k; ++before)
                at += blockHeight(blocks_[before], half);
            paintBlock(column, at, blocks_[k]);
        }
    }
    void paintBlock(const QRectF& column, double y, const Block& block) {
        y = paintHeading(paper_, column, y, qt(block.first)) - 0.6;
        for (const std::string& one : block.second) {
            paper_.text({column.left(), y, 3, Paper::lineHeight(noteType)}, QStringLiteral("–"), noteType);
            y += paper_.paragraph({column.left() + 3, y, column.width() - 3, 0}, qt(one), noteType) + 0.6;
        }
    }
    /// What could not be printed. Names stand on the first page, so all of it is known by now.
    [[nodiscard]] std::string missingWords() const {
        for (const auto& [title, paragraphs] : sheet_.notes)
            for (const std::string& one : paragraphs) (void)paper_.printable(qt(one));
        for (const shop::ValueRow& row : sheet_.typical) (void)paper_.printable(qt(row.what + row.condition));
        return missingCharacters(paper_, sheet_.manner.say()).toStdString();
    }

    Paper& paper_;
    const shop::Datasheet& sheet_;
    int pages_;
    std::size_t agreedFrom_ = 0, typicalFrom_ = 0;
    std::vector<std::pair<std::string, std::vector<std::string>>> blocks_;  ///< the notes
    double below_ = 0;                                                      ///< where room begins below them
};

}  // namespace

int paintDatasheetPages(Paper& paper, const shop::Datasheet& sheet, int pages) {
    return DatasheetPages(paper, sheet, pages).paint();
}

}  // namespace papers
