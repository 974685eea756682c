// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot_pane.h"

#include <QApplication>
#include <QBuffer>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QFileDialog>
#include <QMenu>
#include <QSvgGenerator>
#include <QVBoxLayout>
#include <exception>

#include "exchange/write_file.h"
#include "plots/trace_csv.h"

namespace plots {

PlotPane::PlotPane(View view, bool choosable, QWidget* parent)
    : QWidget(parent),
      plot_(new Plot(std::move(view), this)),
      readout_(new bench::ElidedLabel(this)),
      difference_(new bench::ElidedLabel(this)) {
    auto* row = new QHBoxLayout;
    row->setContentsMargins(4, 2, 4, 0);
    row->setSpacing(12);
    if (choosable) {
        choice_ = new QComboBox(this);
        choice_->setAccessibleName(tr("Curve of the fourth plot"));
        choice_->setToolTip(tr("Which curve this plot shows"));
        choice_->setFocusPolicy(Qt::StrongFocus);
        choice_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        choice_->setMinimumContentsLength(20);
        row->addWidget(choice_);
        connect(choice_, &QComboBox::activated, this, [this](int index) {
            const QStringList parts = choice_->itemData(index).toStringList();
            plot_->setView({parts.value(0).toStdString(), parts.value(1).toStdString(), {}});
        });
    } else {
        title_ = new bench::ElidedLabel(this);
        QFont strong = font();
        strong.setWeight(QFont::DemiBold);
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
    const View before = plot_->view();
    choice_->clear();
    int chosen = -1;
    for (const auto& trace : answer.traces) {
        for (const analysis::Curve& curve : trace->curves) {
            if (curve.y.empty()) continue;
            if (trace->name == before.trace && (curve.name == before.curve || (before.curve.empty() && chosen < 0)))
                chosen = choice_->count();
            choice_->addItem(QString::fromStdString(trace->title + " · " + curve.label),
                             QStringList{QString::fromStdString(trace->name), QString::fromStdString(curve.name)});
        }
    }
    choice_->setCurrentIndex(std::max(chosen, 0));
    const QStringList parts = choice_->currentData().toStringList();
    plot_->setView({parts.value(0).toStdString(), parts.value(1).toStdString(), {}});
}

void PlotPane::showWords() {
    if (title_) title_->setText(plot_->title());
    readout_->setText(plot_->readout());
    const QString words = plot_->difference();
    difference_->setText(words.isEmpty() ? words : tr("held → now: %1").arg(words));
    difference_->setVisible(plot_->holding());
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
    connect(menu.addAction(tr("&Fit")), &QAction::triggered, plot_, &Plot::fitAsked);
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
        emit said(QString::fromUtf8(failure.what()));
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
        emit said(QString::fromUtf8(failure.what()));
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
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    plot.toPixmap(size.width(), size.height(), 2).save(&buffer, "PNG");
    return buffer.data().toStdString();
}

}  // namespace plots
