// SPDX-License-Identifier: GPL-3.0-or-later
// The handbook on screen: pages in their order, a page beside them, and a search through all.
#pragma once

#include <QDialog>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTextBrowser>
#include <vector>

#include "handbook/pages.h"

namespace handbook {

/// One page, dressed; links lead to other pages.
class PageView : public QTextBrowser {
    Q_OBJECT
public:
    using QTextBrowser::QTextBrowser;
    void recolour();

signals:
    void pageShown(const QString& file);

protected:
    void doSetSource(const QUrl& url, QTextDocument::ResourceType type) override;
    void changeEvent(QEvent* event) override;
};

class HandbookWindow : public QDialog {
    Q_OBJECT
public:
    /// Throws units::BadInput as `pages`.
    HandbookWindow(const QString& folder, QWidget* parent);

    void showPage(const QString& file);
    [[nodiscard]] QString shownPage() const;
    [[nodiscard]] QListWidget& list() const { return *list_; }
    [[nodiscard]] PageView& view() const { return *view_; }
    [[nodiscard]] QLineEdit& search() const { return *search_; }

private:
    void build();
    QLayout* head();
    void choose(const QString& file);
    void narrow(const QString& words);
    void findNext();

    QString folder_;
    std::vector<Page> pages_;
    QListWidget* list_ = nullptr;
    PageView* view_ = nullptr;
    QLineEdit* search_ = nullptr;
};

}  // namespace handbook
