// SPDX-License-Identifier: GPL-3.0-or-later
#include "handbook/handbook_window.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QSplitter>
#include <QVBoxLayout>

#include "bench/theme.h"
#include "handbook/page_look.h"

namespace handbook {

namespace {

constexpr int columnWidth = 700;  // px

}  // namespace

void PageView::doSetSource(const QUrl& url, QTextDocument::ResourceType type) {
    QTextBrowser::doSetSource(url, type);
    recolour();
    emit pageShown(source().fileName());
}

void PageView::recolour() {
    const QColor base = bench::colour(bench::Token::Base);
    dress(*document(), {columnWidth - 40, bench::colour(bench::Token::Line),
                        bench::mixed(base, bench::colour(bench::Token::Line), 0.2)});
}

void PageView::changeEvent(QEvent* event) {
    QTextBrowser::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !source().isEmpty()) recolour();
}

HandbookWindow::HandbookWindow(const QString& folder, QWidget* parent)
    : QDialog(parent), folder_(folder), pages_(pages(folder)) {
    setWindowTitle(tr("Handbook"));
    build();
    for (const Page& page : pages_) {
        auto* row = new QListWidgetItem(page.title, list_);
        row->setData(Qt::UserRole, page.file);
    }
    connect(list_, &QListWidget::currentItemChanged, this, [this](const QListWidgetItem* row) {
        if (row && row->data(Qt::UserRole).toString() != shownPage()) showPage(row->data(Qt::UserRole).toString());
    });
    connect(view_, &PageView::pageShown, this, &HandbookWindow::choose);
    connect(search_, &QLineEdit::textChanged, this, &HandbookWindow::narrow);
    connect(search_, &QLineEdit::returnPressed, this, &HandbookWindow::findNext);
    resize(980, 720);
}

void HandbookWindow::build() {
    list_ = new QListWidget;
    list_->setAccessibleName(tr("Pages of the handbook"));
    list_->setFrameShape(QFrame::NoFrame);
    view_ = new PageView;
    view_->setAccessibleName(tr("Page"));
    view_->setFrameShape(QFrame::NoFrame);
    view_->setOpenLinks(true);
    view_->document()->setDocumentMargin(16);
    auto* sides = new QSplitter;
    sides->addWidget(list_);
    sides->addWidget(view_);
    sides->setStretchFactor(1, 1);
    sides->setSizes({240, columnWidth});
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->addLayout(head());
    column->addWidget(sides, 1);
}

QLayout* HandbookWindow::head() {
    auto* row = new QHBoxLayout;
    const auto step = [&](const QString& words, void (QTextBrowser::*go)(), void (QTextBrowser::*may)(bool)) {
        auto* button = new QPushButton(words);
        button->setEnabled(false);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, view_, go);
        connect(view_, may, button, &QPushButton::setEnabled);
        row->addWidget(button);
    };
    step(tr("&Back"), &QTextBrowser::backward, &QTextBrowser::backwardAvailable);
    step(tr("&Onward"), &QTextBrowser::forward, &QTextBrowser::forwardAvailable);
    row->addStretch(1);
    search_ = new QLineEdit;
    search_->setAccessibleName(tr("Search the handbook"));
    search_->setPlaceholderText(tr("Search all pages; Enter goes to the next place"));
    search_->setClearButtonEnabled(true);
    search_->setMinimumWidth(320);
    row->addWidget(search_);
    return row;
}

void HandbookWindow::showPage(const QString& file) {
    view_->setSource(QUrl::fromLocalFile(folder_ + QLatin1Char('/') + file));
}

QString HandbookWindow::shownPage() const {
    return view_->source().fileName();
}

void HandbookWindow::choose(const QString& file) {
    for (int row = 0; row < list_->count(); ++row)
        if (list_->item(row)->data(Qt::UserRole).toString() == file) list_->setCurrentRow(row);
}

/// Only pages that hold the words stay in the list.
void HandbookWindow::narrow(const QString& words) {
    for (std::size_t k = 0; k < pages_.size(); ++k)
        list_->item(static_cast<int>(k))->setHidden(!pages_[k].text.contains(words, Qt::CaseInsensitive));
}

/// The next place on this page, else on the next page that has one.
void HandbookWindow::findNext() {
    const QString words = search_->text();
    if (words.isEmpty() || view_->find(words)) return;
    const int count = list_->count(), from = list_->currentRow();
    for (int k = 1; k <= count; ++k) {
        const int row = (from + k) % count;
        if (list_->item(row)->isHidden()) continue;
        list_->setCurrentRow(row);
        view_->moveCursor(QTextCursor::Start);
        if (view_->find(words)) return;
    }
}

}  // namespace handbook
