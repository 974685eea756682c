// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's unit records: those that a filter means as rows, and what they say together.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QWidget>

#include "bench/control_chart_view.h"
#include "bench/histogram.h"
#include "bench/record_table.h"
#include "solver/aside.h"

namespace bench {

class UnitList : public QWidget {
    Q_OBJECT
public:
    explicit UnitList(QWidget* parent = nullptr);

    /// Another file; "" none.
    void setFile(const QString& path);
    /// Limits of the open design's part.
    void setPlan(UnitPlanPtr plan);
    void choosePart(const QString& part);
    /// Asks the file anew.
    void ask();
    [[nodiscard]] bool busy() const { return aside_.busy(); }
    [[nodiscard]] RecordTable& records() { return *table_; }
    [[nodiscard]] ControlChartView& chart() { return *chart_; }
    [[nodiscard]] HistogramView& histogram() { return *histogram_; }
    [[nodiscard]] QString words() const { return words_->toPlainText(); }
    [[nodiscard]] const UnitStudyPtr& study() const { return study_; }

signals:
    void told(const QString& sentence);

private:
    QLayout* filters();
    QWidget* picture();
    QLineEdit* line(QLayout& row, const QString& label, const QString& tip, int width);
    QComboBox* choice(QLayout& row, const QString& label, const QString& tip);
    /// Throws units::BadInput for a day that is none.
    [[nodiscard]] records::Filter filter() const;
    void complain(const QString& why);
    void showStudy(const UnitStudyPtr& study);
    void showTests();
    void showSummary();
    void showHistogram();
    [[nodiscard]] QStringList countLines() const;
    [[nodiscard]] QStringList testLines(const TestStudy& test) const;

    UnitPlanPtr plan_;
    UnitStudyPtr study_;
    solver::Aside aside_;
    QString file_;
    bool complained_ = false;
    QLineEdit *part_ = nullptr, *revision_ = nullptr, *lot_ = nullptr, *from_ = nullptr, *before_ = nullptr;
    QComboBox *stage_ = nullptr, *verdict_ = nullptr, *test_ = nullptr;
    RecordTable* table_ = nullptr;
    ControlChartView* chart_ = nullptr;
    HistogramView* histogram_ = nullptr;
    QPlainTextEdit *words_ = nullptr, *one_ = nullptr;
};

}  // namespace bench
