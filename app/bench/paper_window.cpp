// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/paper_window.h"

#include <QEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScrollBar>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <cmath>

#include "bench/language.h"
#include "exchange/design_json.h"
#include "exchange/fixture_file.h"
#include "exchange/load_tolerances.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "papers/datasheet.h"
#include "papers/paper_text.h"
#include "papers/paper_words.h"
#include "units/fault.h"
#include "winding/controls.h"

namespace bench {

namespace {

constexpr double leastScale = 0.4, mostScale = 4, zoomStep = 1.25;
constexpr int pageGap = 14;

/// What went wrong, as a value that another thread can hand over.
struct Refused {
    QString sentence;
};

}  // namespace

PaperWindow::PaperWindow(document::Document& document, std::vector<std::string> folders,
                         std::function<analysis::Question()> question, QWidget* parent)
    : QDialog(parent), document_(document), folders_(std::move(folders)), question_(std::move(question)) {
    setWindowTitle(tr("Papers"));
    build();
    for (const papers::PaperKind& one : papers::paperKinds()) kind_->addItem(tr(one.title));
    format_->addItems({tr("A4"), tr("US Letter")});
    measures_->addItems({tr("millimetres"), tr("inches")});
    language_->addItem(tr("English"), QString());
    for (const std::string& key : papers::paperLanguages(folders_)) {
        try {
            language_->addItem(papers::qt(papers::paperWords(key, folders_, "language")->language()), papers::qt(key));
        } catch (const std::exception& failure) {
            say(translated(failure.what()));
        }
    }
    connectAll();
    resize(900, 900);
    kind_->setFocus();
    make();
}

void PaperWindow::build() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    column->addLayout(choices());
    column->addLayout(belongings());
    message_ = new ElidedLabel;
    column->addWidget(message_);
    area_ = new QScrollArea;
    area_->setBackgroundRole(QPalette::Mid);
    area_->setWidgetResizable(true);
    area_->setAccessibleName(tr("Pages"));
    area_->setAccessibleDescription(tr("The paper page by page; + and − change their size"));
    area_->setFocusPolicy(Qt::StrongFocus);
    column->addWidget(area_, 1);
}

QLayout* PaperWindow::choices() {
    auto* row = new QHBoxLayout;
    const auto choice = [&](const QString& name, const QString& tip, QLabel** label = nullptr) {
        auto* words = new QLabel(name);
        if (label) *label = words;
        row->addWidget(words);
        QComboBox* made = winding::namedChoice(*words, tip);
        made->setSizeAdjustPolicy(QComboBox::AdjustToContents);
        row->addWidget(made);
        return made;
    };
    kind_ = choice(tr("&Paper"), tr("Which paper; those for customers never carry the recipe"));
    format_ = choice(tr("&Size"), tr("Size of its pages"));
    measures_ = choice(tr("&Measures"), tr("In what lengths are printed"));
    language_ = choice(tr("&Language"), tr("Of the paper, whatever the program speaks"), &languageName_);
    row->addStretch(1);
    return row;
}

QLayout* PaperWindow::belongings() {
    auto* row = new QHBoxLayout;
    pricesButton_ = winding::actButton(this, tr("P&rices…"), tr("The shop's own prices and times, a CSV file"),
                                       &PaperWindow::choosePrices);
    beforeButton_ = winding::actButton(this, tr("&Earlier revision…"), tr("The design that the change begins from"),
                                       &PaperWindow::chooseBefore);
    belongs_ = new ElidedLabel;
    save_ = winding::actButton(this, tr("Sa&ve as PDF…"), tr("Write the paper that is shown (Ctrl+S)"),
                               &PaperWindow::chooseFile);
    save_->setShortcut(QKeySequence(QStringLiteral("Ctrl+S")));
    row->addWidget(pricesButton_);
    row->addWidget(beforeButton_);
    row->addWidget(belongs_, 1);
    row->addWidget(save_);
    return row;
}

void PaperWindow::connectAll() {
    for (QComboBox* one : {kind_, format_, measures_, language_})
        connect(one, &QComboBox::currentIndexChanged, this, &PaperWindow::make);
    connect(&document_, &document::Document::changed, this, &PaperWindow::make);
    connect(&aside_, &solver::Aside::failed, this, &PaperWindow::say);
}

const papers::PaperKind& PaperWindow::kind() const {
    return papers::paperKinds()[static_cast<std::size_t>(std::max(0, kind_->currentIndex()))];
}

papers::Source PaperWindow::source() const {
    // Values alone, so that another thread may keep them: the design and its catalog are never changed.
    const design::DesignPtr design = document_.design();
    const std::shared_ptr<const catalog::Catalog> shop = document_.shop();
    papers::Source all{design, *shop, {papers::paperDate(), exchange::digestOf(*design, *shop), {}}};
    all.format = format_->currentIndex() == 1 ? papers::Format::Letter : papers::Format::A4;
    all.issue.manner.in.inch = measures_->currentIndex() == 1;
    if (kind().translated)
        all.issue.manner.words =
            papers::paperWords(language_->currentData().toString().toStdString(), folders_, "language");
    all.text = exchange::writeDesign(*design, *shop);
    all.answer = [design, shop, question = question_()] { return analysis::answer(*design, *shop, {}, {}, question); };
    all.fixture = [folders = folders_] {
        const std::string file = exchange::fixtureFile(folders);
        return exchange::readFixture(exchange::readFile(file), file);
    };
    all.tolerances = [folders = folders_] { return exchange::loadTolerances(folders); };
    all.prices = prices_;
    all.pricesFile = pricesFile_;
    all.before = before_;
    return all;
}

void PaperWindow::make() {
    languageName_->setVisible(kind().translated && language_->count() > 1);
    language_->setVisible(kind().translated && language_->count() > 1);
    const bool bill = std::string_view(kind().key) == "bill";
    pricesButton_->setVisible(bill || kind().priced);
    beforeButton_->setVisible(kind().compares);
    belongs_->setText(
        bill || kind().priced ? (prices_ ? QFileInfo(papers::qt(pricesFile_)).fileName() : tr("no prices yet"))
        : kind().compares
            ? (before_ ? tr("from revision %1, %2")
                             .arg(papers::qt(before_->design->revision), papers::qt(before_->design->name))
                       : tr("no earlier revision yet"))
            : QString());
    printed_.reset();
    save_->setEnabled(false);
    try {
        say(tr("%1 is being made.").arg(tr(kind().title)));
        aside_.start(
            [of = source(), one = &kind(), shop = document_.shop()](const std::stop_token&) -> std::any {
                try {
                    return papers::made(*one, of);
                } catch (const units::BadInput& bad) {
                    return Refused{translated(bad.what())};
                }
            },
            [this](const std::any& result) {
                if (const auto* refused = std::any_cast<Refused>(&result)) {
                    showPages();
                    return say(refused->sentence);
                }
                showMade(std::any_cast<const papers::Made&>(result));
            });
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
    }
    if (!aside_.busy()) showPages();
}

void PaperWindow::showMade(const papers::Made& made) {
    printed_ = made.printed;
    save_->setEnabled(true);
    showPages();
    const auto count = static_cast<int>(pages().size());
    const QString whose = kind().outside
                              ? tr("for the customer: it does not say how the unit is wound")
                              : tr("for the shop: it holds the recipe, and the design goes along in the PDF");
    const QString size = count == 1 ? tr("one page") : tr("%1 pages").arg(count);
    say(tr("%1, %2, %3.").arg(tr(kind().title), size, whose));
}

void PaperWindow::showPages() {
    auto* sheet = new QWidget;
    auto* column = new QVBoxLayout(sheet);
    column->setSpacing(pageGap);
    column->setContentsMargins(pageGap, pageGap, pageGap, pageGap);
    if (printed_) {
        const double ratio = devicePixelRatioF();
        auto all = papers::pagePictures(*printed_, logicalDpiX() * scale_ * ratio);
        for (std::size_t k = 0; k < all.size(); ++k) {
            auto* page = new QLabel;
            all[k].image.setDevicePixelRatio(ratio);
            page->setPixmap(QPixmap::fromImage(all[k].image));
            page->setAlignment(Qt::AlignHCenter);
            page->setAccessibleName(tr("%1, page %2 of %3").arg(tr(kind().title)).arg(k + 1).arg(all.size()));
            page->setAccessibleDescription(all[k].words);
            column->addWidget(page, 0, Qt::AlignHCenter);
        }
    }
    column->addStretch(1);
    sheet->setBackgroundRole(QPalette::Mid);
    area_->setWidget(sheet);
}

std::vector<QLabel*> PaperWindow::pages() const {
    std::vector<QLabel*> all;
    if (area_->widget() == nullptr) return all;
    const QLayout* column = area_->widget()->layout();
    for (int k = 0; k < column->count(); ++k)
        if (auto* page = qobject_cast<QLabel*>(column->itemAt(k)->widget())) all.push_back(page);
    return all;
}

void PaperWindow::zoom(double factor) {
    const double before = scale_;
    scale_ = std::clamp(scale_ * factor, leastScale, mostScale);
    if (scale_ == before || !printed_) return;
    const QScrollBar& bar = *area_->verticalScrollBar();
    const double at = bar.maximum() > 0 ? static_cast<double>(bar.value()) / bar.maximum() : 0;
    showPages();
    area_->widget()->adjustSize();
    area_->verticalScrollBar()->setValue(static_cast<int>(std::lround(at * area_->verticalScrollBar()->maximum())));
}

void PaperWindow::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Plus || event->key() == Qt::Key_Equal) return zoom(zoomStep);
    if (event->key() == Qt::Key_Minus) return zoom(1 / zoomStep);
    QDialog::keyPressEvent(event);
}

void PaperWindow::changeEvent(QEvent* event) {
    QDialog::changeEvent(event);
    if (event->type() == QEvent::FontChange && printed_) showPages();
}

void PaperWindow::say(const QString& sentence) {
    message_->setText(sentence);
}

void PaperWindow::takePrices(const QString& path) {
    try {
        prices_ = shop::readPrices(exchange::readFile(path.toStdString()), path.toStdString());
        pricesFile_ = path.toStdString();
        make();
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
    }
}

void PaperWindow::takeBefore(const QString& path) {
    try {
        papers::Before before;
        const catalog::Catalog& shop = *document_.shop();
        before.design = exchange::readDesign(exchange::readFile(path.toStdString()), path.toStdString(), shop).design;
        before.digest = exchange::digestOf(*before.design, shop);
        before_ = std::move(before);
        make();
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
    }
}

bool PaperWindow::save(const QString& path) {
    if (!printed_) return false;
    try {
        const QByteArray bytes = papers::paintedPdf(*printed_);
        exchange::writeFile(path.toStdString(),
                            std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
        return false;
    }
    say(tr("%1 is written to %2.").arg(tr(kind().title), QFileInfo(path).fileName()));
    return true;
}

void PaperWindow::choosePrices() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Prices"), QFileInfo(document_.path()).path(),
                                                      QStringLiteral("CSV (*.csv)"));
    if (!path.isEmpty()) takePrices(path);
}

void PaperWindow::chooseBefore() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Earlier revision"), QFileInfo(document_.path()).path(),
                                                      QStringLiteral("Coilwright (*.coilwright)"));
    if (!path.isEmpty()) takeBefore(path);
}

void PaperWindow::chooseFile() {
    const QString name = papers::qt(document_.design()->name) + QLatin1Char(' ') + QLatin1String(kind().key);
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Save paper"), QFileInfo(document_.path()).path() + QLatin1Char('/') + name + QStringLiteral(".pdf"),
        QStringLiteral("PDF (*.pdf)"));
    if (!path.isEmpty()) save(path);
}

}  // namespace bench
