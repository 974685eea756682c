// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot_pane.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QBuffer>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QFileDialog>
#include <QMenu>
#include <QSvgGenerator>
#include <QVBoxLayout>
#include <algorithm>
#include <exception>

#include "bench/language.h"
#include "exchange/write_file.h"
#include "plots/arrangement.h"
#include "plots/small_png.h"
#include "plots/trace_csv.h"

namespace plots {

namespace {

QStringList inWords(const View& view) {
    return {QString::fromStdString(view.trace), QString::fromStdString(view.curve),
            QString::fromStdString(view.rightUnit)};
}

View ofWords(const QStringList& words) {
    return {words.value(0).toStdString(), words.value(1).toStdString(), words.value(2).toStdString()};
}

}  // namespace

PlotPane::PlotPane(View view, int number, QWidget* parent)
    : QWidget(parent),
      plot_(new Plot(std::move(view), this)),
      readout_(new bench::ElidedLabel(this)),
      difference_(new bench::ElidedLabel(this)) {
    auto* row = new QHBoxLayout;
    row->setContentsMargins(4, 2, 4, 0);
    row->setSpacing(12);
    QFont strong = font();
    strong.setWeight(QFont::DemiBold);
    if (number > 0) {
        makeChoice(number);
        choice_->setFont(strong);
        row->addWidget(choice_);
    } else {
        title_ = new bench::ElidedLabel(this);
        title_->setFont(strong);
        title_->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
        row->addWidget(title_);
    }
    readout_->setColourRole(QPalette::PlaceholderText);
    readout_->setAlignment(Qt::AlignRight);
    row->addWidget(readout_, 1);
    difference_->setContentsMargins(4, 0, 4, 0);
    difference_->setVisible(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addLayout(row);
    column->addWidget(difference_);
    column->addWidget(plot_, 1);
    readout_->setMinimumHeight(QComboBox().sizeHint().height());  // the same in every pane, so that plots stand in line
    setFocusProxy(plot_);
    connect(plot_, &Plot::wordsChanged, this, &PlotPane::showWords);
    showWords();
}

void PlotPane::makeChoice(int number) {
    choice_ = new QComboBox(this);
    choice_->setAccessibleName(tr("What plot %1 shows").arg(number));
    choice_->setToolTip(tr("Which curves this plot shows"));
    choice_->setFocusPolicy(Qt::StrongFocus);
    choice_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    choice_->setMinimumContentsLength(8);
    choice_->setMaxVisibleItems(24);
    choice_->view()->setTextElideMode(Qt::ElideNone);
    connect(choice_, &QComboBox::activated, this, [this] {
        plot_->setView(ofWords(choice_->currentData().toStringList()));
        fitChoice();
        emit viewChosen();
    });
}

void PlotPane::setView(const View& view) {
    plot_->setView(view);
    if (choice_) showChoice();
}

void PlotPane::showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    if (choice_ && answer) offer(*answer);
    plot_->showAnswer(answer, design);
}

void PlotPane::offer(const analysis::Answer& answer) {
    QStringList names;
    for (const auto& trace : answer.traces)
        for (const analysis::Curve& curve : trace->curves)
            if (!curve.y.empty()) names << QString::fromStdString(trace->name + "\n" + curve.name);
    if (names == offered_) return;
    offered_ = names;
    choice_->clear();
    for (const auto& trace : answer.traces) {
        const auto drawn = std::count_if(trace->curves.begin(), trace->curves.end(),
                                         [](const analysis::Curve& curve) { return !curve.y.empty(); });
        if (drawn == 0) continue;
        choice_->addItem(bench::translated(trace->title), inWords(wholeView(*trace)));
        for (const analysis::Curve& curve : trace->curves)
            if (drawn > 1 && !curve.y.empty())
                choice_->addItem(
                    bench::translated(trace->title) + QStringLiteral(" · ") + bench::translated(curve.label),
                    inWords({trace->name, curve.name, {}}));
    }
    choice_->view()->setMinimumWidth(choice_->view()->sizeHintForColumn(0) + 24);
    showChoice();
}

/// What is shown stands in the box, or what it would be if this design had it: the plot waits for it.
void PlotPane::showChoice() {
    choice_->setPlaceholderText(plot_->title());
    choice_->setCurrentIndex(choice_->findData(inWords(plot_->view())));
    fitChoice();
}

/// As wide as what it says, so that the values beside it have the rest.
void PlotPane::fitChoice() {
    const QString says = choice_->currentIndex() < 0 ? choice_->placeholderText() : choice_->currentText();
    const QFontMetrics metrics(choice_->font());
    const int around = metrics.horizontalAdvance(QStringLiteral("mmmm"));  // the frame and the arrow
    choice_->setFixedWidth(std::max(choice_->sizeHint().width(), metrics.horizontalAdvance(says) + around));
}

void PlotPane::showWords() {
    if (title_) title_->setText(plot_->title());
    readout_->setText(plot_->readout());
    const QString words = plot_->difference();
    QStringList lines;
    if (!words.isEmpty()) lines << tr("held → now: %1").arg(words);
    if (const QString measured = plot_->measuredWords(); !measured.isEmpty()) lines << measured;
    difference_->setText(lines.join(QStringLiteral("   ")));
    difference_->setVisible(plot_->holding() || !lines.isEmpty());
}

void PlotPane::contextMenuEvent(QContextMenuEvent* event) {
    QMenu menu(this);
    connect(menu.addAction(tr("&Copy picture")), &QAction::triggered, this, [this] {
        QApplication::clipboard()->setPixmap(plot_->toPixmap(plot_->width(), plot_->height(), 2));
        emit said(tr("The picture of %1 is on the clipboard.").arg(plot_->title()));
    });
    connect(menu.addAction(tr("Save &drawing (SVG)…")), &QAction::triggered, this, &PlotPane::savePicture);
    connect(menu.addAction(tr("Save &table (CSV)…")), &QAction::triggered, this, &PlotPane::saveTable);
    menu.addSeparator();
    connect(menu.addAction(tr("&Fit\t0")), &QAction::triggered, plot_, &Plot::fitAsked);
    connect(menu.addAction(tr("&Back\tBackspace")), &QAction::triggered, plot_, &Plot::backAsked);
    if (choice_)
        connect(menu.addAction(tr("&Alone, or all again\tEnter")), &QAction::triggered, plot_, &Plot::aloneAsked);
    menu.exec(event->globalPos());
}

QString PlotPane::askPath(const QString& what, const QString& suffix) {
    return QFileDialog::getSaveFileName(this, what,
                                        QString::fromStdString(plot_->view().trace) + QLatin1Char('.') + suffix,
                                        QStringLiteral("*.") + suffix);
}

void PlotPane::savePicture() {
    const QString path = askPath(tr("Save drawing"), QStringLiteral("svg"));
    if (path.isEmpty()) return;
    try {
        exchange::writeFile(path.toStdString(), plotSvg(*plot_, plot_->size()));
        emit said(tr("%1 is written.").arg(path));
    } catch (const std::exception& failure) {
        emit said(bench::translated(failure.what()));
    }
}

void PlotPane::saveTable() {
    if (!plot_->trace()) return;
    const QString path = askPath(tr("Save table"), QStringLiteral("csv"));
    if (path.isEmpty()) return;
    try {
        exchange::writeFile(path.toStdString(), traceCsv(*plot_->trace()));
        emit said(tr("%1 is written.").arg(path));
    } catch (const std::exception& failure) {
        emit said(bench::translated(failure.what()));
    }
}

std::string plotSvg(Plot& plot, const QSize& size) {
    QBuffer buffer;
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(0, 0), size));
    generator.setTitle(plot.title());
    {
        QCPPainter painter(&generator);
        painter.setMode(QCPPainter::pmVectorized);
        painter.setMode(QCPPainter::pmNoCaching);
        plot.toPainter(&painter, size.width(), size.height());
    }
    return buffer.data().toStdString();
}

std::string plotPng(Plot& plot, const QSize& size) {
    return smallPng(plot.toPixmap(size.width(), size.height(), 2).toImage());
}

}  // namespace plots
