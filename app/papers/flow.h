// SPDX-License-Identifier: GPL-3.0-or-later
// Text, facts and lines to tick that run down the pages of a paper.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "papers/paper.h"
#include "shop/paper_head.h"

namespace papers {

/// Sizes of an inside paper's type, pt.
inline constexpr double instruction = 12, fact = 10, small = 9;

class Flow {
public:
    /// Begins the first page with the paper's title.
    Flow(Paper& paper, const shop::PaperHead& head, int pages, bool outside = false);

    [[nodiscard]] Paper& paper() { return paper_; }
    [[nodiscard]] QRectF column() const { return column_; }
    [[nodiscard]] double y() const { return y_; }
    [[nodiscard]] double pageHeight() const { return body().height() - bannerHeight; }  ///< of a page's content, mm
    void moveTo(double y) { y_ = y; }
    void gap(double mm) { y_ += mm; }
    /// Goes to a new page unless `height` mm are left.
    void need(double height);
    void newPage();
    /// Everything from here on is set in a column of this width, from this far to the right; all: the whole width.
    void narrow(double from, double width);
    void wide();

    void heading(const QString& words);
    void paragraph(const QString& words, const Type& type);
    /// Head in muted type and words beside it; empty words: a line to write on.
    void facts(const std::vector<shop::Fact>& rows, double headWidth);
    /// A box to tick, what stands before the words (right-aligned) and the words.
    void tick(const QString& before, const QString& words, double beforeWidth, const Type& type);
    /// The heights of the two in a column of the width in use, mm.
    [[nodiscard]] double factsHeight(const std::vector<shop::Fact>& rows, double headWidth) const;
    [[nodiscard]] double tickHeight(const QString& words, double beforeWidth, const Type& type) const;
    /// A line to write on, with its label before it.
    void blank(double x, double width, const QString& label);
    /// Ends the last page; returns how many there are.
    int end();

private:
    static constexpr double bannerHeight = 7;
    [[nodiscard]] QRectF body() const;
    [[nodiscard]] double factHeight(const shop::Fact& row, double headWidth) const;
    [[nodiscard]] double tickWidth(double beforeWidth) const;
    void banner();

    Paper& paper_;
    const shop::PaperHead& head_;
    int pages_;
    bool outside_;  ///< for a customer
    QRectF column_;
    double y_ = 0;
};

/// Room between columns of a table, mm.
inline constexpr double cellGap = 2;

}  // namespace papers
