// SPDX-License-Identifier: GPL-3.0-or-later
// Designs sought from the open design's brief: the candidates as small cuts, and what each gives up.
#pragma once

#include <QCheckBox>
#include <QDialog>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <memory>

#include "bench/card_shelf.h"
#include "bench/price_choice.h"
#include "document/document.h"
#include "seek/search.h"
#include "solver/aside.h"

namespace bench {

class SeekWindow : public QDialog {
    Q_OBJECT
public:
    SeekWindow(document::Document& document, QWidget* parent);
    ~SeekWindow() override;

    [[nodiscard]] bool busy() const { return aside_.busy(); }
    [[nodiscard]] QList<DesignCard*> cards() const { return shelf_->cards(); }
    [[nodiscard]] PriceChoice& prices() { return *prices_; }
    [[nodiscard]] QString words() const { return words_->toPlainText(); }

signals:
    void besideAsked(const design::DesignPtr& candidate);

private:
    QLayout* holding();
    QLayout* foot();
    void seekOrEnough();
    void start();
    void tell(std::size_t tried);
    void showList(const seek::ShortList& list);
    void showChosen();
    void takeUp();
    void putBeside();
    void showEnabled();
    [[nodiscard]] seek::Held held() const;
    [[nodiscard]] const seek::Candidate* chosen() const;

    document::Document& document_;
    solver::Aside aside_;
    std::stop_source enough_;
    std::vector<seek::Candidate> candidates_;
    std::shared_ptr<const shop::Prices> priced_;  ///< those that the list was made with
    QCheckBox *core_ = nullptr, *turns_ = nullptr, *wires_ = nullptr, *order_ = nullptr, *insulation_ = nullptr;
    QPushButton *seek_ = nullptr, *takeUp_ = nullptr, *beside_ = nullptr;
    PriceChoice* prices_ = nullptr;
    QLabel* state_ = nullptr;
    CardShelf* shelf_ = nullptr;
    QPlainTextEdit* words_ = nullptr;
};

}  // namespace bench
