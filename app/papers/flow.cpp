// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/flow.h"

#include <algorithm>

#include "papers/paper_text.h"
#include "papers/tables.h"
#include "papers/title_block.h"

namespace papers {

namespace {

constexpr double tickSize = 3.6, tickRoom = 6, tickGap = 1, factGap = 0.6;
Type factType() {
    return {fact, false, {}, Qt::AlignLeft};
}
Type factHead() {
    return {small, false, Paper::muted(), Qt::AlignLeft};
}

}  // namespace

Flow::Flow(Paper& paper, const shop::PaperHead& head, int pages, bool outside)
    : paper_(paper), head_(head), pages_(pages), outside_(outside) {
    column_ = body();
    banner();
    const Type name{14, true, {}, Qt::AlignLeft};
    const QRectF all = paper_.content();
    y_ += paper_.paragraph({all.left(), y_, all.width(), 0}, qt(head_.title), name, 3);
    paper_.line({all.left(), y_ + 1.5}, {all.right(), y_ + 1.5}, 0.6, Paper::accent());
    y_ += 4.5;
}

QRectF Flow::body() const {
    return paper_.content().adjusted(0, 0, 0, -footHeight - 3);
}

/// Says on every page what it is, and of an inside paper that it is no customer's business.
void Flow::banner() {
    const QRectF all = paper_.content();
    const QString words = qt(head_.paper);
    paper_.text({all.left(), all.top(), all.width() / 2, 5}, words, {10, true, Paper::accent(), Qt::AlignLeft});
    if (!outside_)
        paper_.text({all.left() + all.width() / 2, all.top(), all.width() / 2, 5},
                    QStringLiteral("Inside paper: carries the recipe, not for customers"),
                    {8, false, Paper::muted(), Qt::AlignRight});
    y_ = all.top() + bannerHeight;
}

void Flow::need(double height) {
    if (y_ + height > body().bottom()) newPage();
}

void Flow::newPage() {
    paintTitleBlock(paper_, head_, pages_);
    paper_.newPage();
    banner();
}

void Flow::narrow(double from, double width) {
    column_ = {body().left() + from, body().top(), width, body().height()};
}

void Flow::wide() {
    column_ = body();
}

void Flow::heading(const QString& words) {
    need(14);
    y_ = paintHeading(paper_, column_, y_, words);
}

void Flow::paragraph(const QString& words, const Type& type) {
    need(paper_.paragraphHeight(column_.width(), words, type));
    y_ += paper_.paragraph({column_.left(), y_, column_.width(), 0}, words, type);
}

double Flow::factHeight(const shop::Fact& row, double headWidth) const {
    return std::max({Paper::lineHeight(factType()),
                     paper_.paragraphHeight(headWidth - cellGap, qt(row.what), factHead()),
                     paper_.paragraphHeight(column_.width() - headWidth, qt(row.words), factType())}) +
           factGap;
}

double Flow::factsHeight(const std::vector<shop::Fact>& rows, double headWidth) const {
    double height = 0;
    for (const shop::Fact& row : rows) height += factHeight(row, headWidth);
    return height;
}

void Flow::facts(const std::vector<shop::Fact>& rows, double headWidth) {
    const double line = Paper::lineHeight(factType()), wide = column_.width() - headWidth;
    for (const shop::Fact& row : rows) {
        const double height = factHeight(row, headWidth);
        need(height);
        paper_.paragraph({column_.left(), y_ + 0.25, headWidth - cellGap, 0}, qt(row.what), factHead());
        if (row.words.empty())
            paper_.line({column_.left() + headWidth, y_ + line - 0.6}, {column_.right(), y_ + line - 0.6});
        else
            paper_.paragraph({column_.left() + headWidth, y_, wide, 0}, qt(row.words), factType());
        y_ += height;
    }
}

double Flow::tickWidth(double beforeWidth) const {
    return column_.width() - tickRoom - (beforeWidth > 0 ? beforeWidth + cellGap : 0);
}

double Flow::tickHeight(const QString& words, double beforeWidth, const Type& type) const {
    return paper_.paragraphHeight(tickWidth(beforeWidth), words, type) + tickGap;
}

void Flow::tick(const QString& before, const QString& words, double beforeWidth, const Type& type) {
    const double wide = tickWidth(beforeWidth), line = Paper::lineHeight(type);
    const double height = tickHeight(words, beforeWidth, type);
    need(height);
    paper_.box({column_.left(), y_ + (line - tickSize) / 2, tickSize, tickSize}, 0.25);
    if (!before.isEmpty())
        paper_.text({column_.left() + tickRoom, y_, beforeWidth, line}, before, {type.size, true, {}, Qt::AlignRight});
    paper_.paragraph({column_.right() - wide, y_, wide, 0}, words, type);
    y_ += height;
}

void Flow::blank(double x, double width, const QString& label) {
    const Type type{small, false, Paper::muted(), Qt::AlignLeft};
    const double used = paper_.width(label, type) + 1.5;
    paper_.text({column_.left() + x, y_, used, 5}, label, type);
    paper_.line({column_.left() + x + used, y_ + 4.6}, {column_.left() + x + width, y_ + 4.6});
}

int Flow::end() {
    paintTitleBlock(paper_, head_, pages_);
    return paper_.page();
}

}  // namespace papers
