// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/tables.h"
#include "papers/paper_text.h"

#include <algorithm>

namespace papers {

namespace {

void rule(Paper& paper, const QRectF& column, double y) {
    paper.line({column.left(), y}, {column.right(), y}, hairline, QColor(0xB8, 0xB8, 0xB8));
}

/// Where the pieces of a value row stand in a column.
struct RowPlan {
    QString what, condition, value;
    Type whatType, conditionType, valueType;
    double whatWidth = 0, valueWidth = 0;
    bool conditionBeside = false;  ///< behind `what`, else on a line of its own
    bool valueBeside = false;      ///< on the first line, else below everything
    double height = 0;
};

constexpr double gap = 2.5;

RowPlan planned(const Paper& paper, double width, const shop::ValueRow& row, const Setting& setting) {
    RowPlan plan;
    plan.what = qt(row.what);
    plan.condition = qt(row.condition);
    plan.value = qt(row.value) + (row.doubtful ? QStringLiteral(" †") : QString());
    plan.whatType = {setting.size, false, {}, Qt::AlignLeft};
    plan.conditionType = {setting.size - 1, false, Paper::muted(), Qt::AlignLeft};
    plan.valueType = {setting.size, true, {}, Qt::AlignRight};
    plan.whatWidth = paper.width(plan.what, plan.whatType);
    plan.valueWidth = paper.width(plan.value, plan.valueType);
    const double condition = plan.condition.isEmpty() ? 0 : gap + paper.width(plan.condition, plan.conditionType);
    plan.valueBeside = plan.whatWidth + gap + plan.valueWidth <= width;
    plan.conditionBeside = plan.whatWidth + condition + (plan.valueBeside ? gap + plan.valueWidth : 0) <= width;
    plan.height = setting.row;
    if (!plan.conditionBeside) plan.height += setting.row - 0.6;
    if (!plan.valueBeside) plan.height += paper.paragraphHeight(width, plan.value, plan.valueType);
    return plan;
}

void paintRow(Paper& paper, const QRectF& column, double y, const RowPlan& plan, const Setting& setting) {
    paper.text({column.left(), y, column.width(), setting.row}, plan.what, plan.whatType);
    if (plan.valueBeside)
        paper.text({column.right() - plan.valueWidth - 1, y, plan.valueWidth + 1, setting.row}, plan.value,
                   plan.valueType);
    double below = y + setting.row;
    if (plan.conditionBeside) {
        const double x = column.left() + plan.whatWidth + gap;
        paper.text({x, y, column.right() - x + 0.1, setting.row}, plan.condition, plan.conditionType);
    } else {
        paper.text({column.left(), below - 0.6, column.width(), setting.row}, plan.condition, plan.conditionType);
        below += setting.row - 0.6;
    }
    Type type = plan.valueType;
    if (plan.valueWidth > column.width()) type.align = Qt::AlignLeft;
    if (!plan.valueBeside) paper.paragraph({column.left(), below - 0.3, column.width(), 0}, plan.value, type);
}

Setting pinoutSetting(const std::vector<shop::PinoutRow>& rows) {
    return rows.size() > 12 ? tight : usual;
}

}  // namespace

double paintHeading(Paper& paper, const QRectF& column, double y, const QString& words) {
    paper.text({column.left(), y, column.width(), 5}, words, {10, true, Paper::accent(), Qt::AlignLeft});
    return y + 5.8;
}

double pinoutHeight(const std::vector<shop::PinoutRow>& rows) {
    return static_cast<double>(rows.size()) * pinoutSetting(rows).row;
}

double paintPinout(Paper& paper, const QRectF& column, double y, const std::vector<shop::PinoutRow>& rows) {
    constexpr double dotRoom = 4;
    const Setting setting = pinoutSetting(rows);
    const Type bold{setting.size, true, {}, Qt::AlignLeft}, plain{setting.size, false, {}, Qt::AlignLeft};
    double name = 8, where = 12;
    for (const shop::PinoutRow& row : rows) {
        name = std::max(name, std::min(20.0, paper.width(qt(row.terminal), bold) + 3));
        where = std::max(where, std::min(38.0, paper.width(qt(row.where), plain) + 3));
    }
    for (const shop::PinoutRow& row : rows) {
        const double x = column.left() + name + where, wide = column.right() - dotRoom - x;
        const double height = paper.paragraphHeight(wide, qt(row.function), plain);
        const double slack = setting.row - Paper::lineHeight(plain);
        paper.text({column.left(), y, name - 1, setting.row}, qt(row.terminal), bold);
        paper.text({column.left() + name, y, where - 1, setting.row}, qt(row.where), plain);
        paper.paragraph({x, y + slack / 2, wide, 0}, qt(row.function), plain);
        if (row.dot) paper.circle({column.right() - 1.5, y + setting.row / 2}, 0.7, true);
        y += height + slack;
        rule(paper, column, y);
    }
    return y;
}

double valuesHeight(const Paper& paper, double width, const std::vector<shop::ValueRow>& rows, const Setting& setting) {
    double height = 0;
    for (const shop::ValueRow& row : rows) height += planned(paper, width, row, setting).height;
    return height;
}

std::size_t paintValues(Paper& paper, const QRectF& column, double& y, double bottom,
                        const std::vector<shop::ValueRow>& rows, std::size_t from, const Setting& setting) {
    for (std::size_t k = from; k < rows.size(); ++k) {
        const RowPlan plan = planned(paper, column.width(), rows[k], setting);
        if (y + plan.height > bottom) return k;
        paintRow(paper, column, y, plan, setting);
        y += plan.height;
        rule(paper, column, y);
    }
    return rows.size();
}

}  // namespace papers
