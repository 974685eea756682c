// SPDX-License-Identifier: GPL-3.0-or-later
// The papers of the open design as they will lie on the desk: chosen, looked at, saved as PDF.
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <functional>
#include <memory>

#include "bench/elided_label.h"
#include "document/document.h"
#include "papers/paper_kinds.h"
#include "solver/aside.h"

namespace bench {

class PaperWindow : public QDialog {
    Q_OBJECT
public:
    /// `folders` may hold `words`, `fixtures` and tolerances. `question`: which hook-up the bench shows.
    PaperWindow(document::Document& document, std::vector<std::string> folders,
                std::function<analysis::Question()> question, QWidget* parent);

    [[nodiscard]] QComboBox& kinds() { return *kind_; }
    [[nodiscard]] QComboBox& formats() { return *format_; }
    [[nodiscard]] QComboBox& measures() { return *measures_; }
    [[nodiscard]] QComboBox& languages() { return *language_; }
    [[nodiscard]] bool busy() const { return aside_.busy(); }
    [[nodiscard]] QString message() const { return message_->text(); }
    /// The pages that are shown, first to last.
    [[nodiscard]] std::vector<QLabel*> pages() const;
    /// Prices for bill and quotation; an earlier design, or a number of a kept revision, for change notices. A file
    /// that cannot be read is said.
    void takePrices(const QString& path);
    void takeBefore(const QString& path);
    /// Writes what is shown. False, with the reason in the message line, where nothing is or the file cannot be.
    bool save(const QString& path);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void build();
    QLayout* choices();
    QLayout* belongings();
    void connectAll();
    void make();
    void showMade(const papers::Made& made);
    void showPages();
    void zoom(double factor);
    void choosePrices();
    void chooseBefore();
    void chooseFile();
    void say(const QString& sentence);
    [[nodiscard]] const papers::PaperKind& kind() const;
    [[nodiscard]] papers::Source source() const;

    document::Document& document_;
    std::vector<std::string> folders_;
    std::function<analysis::Question()> question_;
    solver::Aside aside_;
    std::optional<shop::Prices> prices_;
    std::string pricesFile_;
    std::optional<papers::Before> before_;
    std::optional<papers::Printed> printed_;
    double scale_ = 1;  ///< of a page that is as wide as on paper, by the screen's dots an inch
    QComboBox *kind_ = nullptr, *format_ = nullptr, *measures_ = nullptr, *language_ = nullptr;
    QLabel* languageName_ = nullptr;
    QPushButton *pricesButton_ = nullptr, *beforeButton_ = nullptr, *save_ = nullptr;
    QScrollArea* area_ = nullptr;
    ElidedLabel *message_ = nullptr, *belongs_ = nullptr;
};

}  // namespace bench
