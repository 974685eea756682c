// SPDX-License-Identifier: GPL-3.0-or-later
// A sample of the open design that breaks promises: its readings, and the smallest changes that bring them back.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>

#include "bench/card_shelf.h"
#include "bench/price_choice.h"
#include "bench/readings_table.h"
#include "document/document.h"
#include "seek/read_sample.h"
#include "solver/aside.h"

namespace bench {

class RespinWindow : public QDialog {
    Q_OBJECT
public:
    /// `answer`: of the open design. `folders`: of data, with the tolerances of the shop.
    RespinWindow(document::Document& document, const analysis::AnswerPtr& answer, std::vector<std::string> folders,
                 QWidget* parent);

    [[nodiscard]] ReadingsTable& readings() { return *readings_; }
    [[nodiscard]] QList<DesignCard*> cards() const { return shelf_->cards(); }
    [[nodiscard]] bool busy() const { return aside_.busy(); }
    [[nodiscard]] QString state() const { return state_->text(); }
    [[nodiscard]] QString words() const { return words_->toPlainText(); }
    /// What is amiss with the file is said, and the readings stay as they were.
    void takeReadings(const QString& path);
    void keepReadings(const QString& path);

signals:
    void besideAsked(const design::DesignPtr& respun);

private:
    QLayout* reading();
    QLayout* foot();
    void chooseReadings();
    void chooseKept();
    void seekOrStop();
    void start();
    void tell(std::size_t tried);
    void showFound();
    void showChosen();
    void showEnabled();
    void takeUp();
    void putBeside();
    [[nodiscard]] const seek::Respin* chosen() const;

    document::Document& document_;
    design::DesignPtr recipe_;  ///< what was wound: the design that was open when this window came up
    std::vector<std::string> folders_;
    solver::Aside aside_;
    seek::ReadSample sample_;
    seek::RespinList list_;
    QString file_;
    ReadingsTable* readings_ = nullptr;
    QPushButton *open_ = nullptr, *keep_ = nullptr, *seek_ = nullptr, *takeUp_ = nullptr, *beside_ = nullptr;
    PriceChoice* prices_ = nullptr;
    CardShelf* shelf_ = nullptr;
    QPlainTextEdit* words_ = nullptr;
    QLabel* state_ = nullptr;
};

}  // namespace bench
