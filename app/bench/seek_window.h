// SPDX-License-Identifier: GPL-3.0-or-later
// Designs sought from the open design's brief: the candidates as small cuts, and what each gives up.
#pragma once

#include <QButtonGroup>
#include <QCheckBox>
#include <QDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <memory>

#include "bench/design_card.h"
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
    [[nodiscard]] QList<DesignCard*> cards() const;
    /// A shop's price file; what is amiss with it is said, and the prices stay as they were.
    void takePrices(const QString& path);
    [[nodiscard]] QString words() const { return words_->toPlainText(); }

signals:
    void besideAsked(const design::DesignPtr& candidate);

private:
    QLayout* holding();
    QLayout* pricing();
    QLayout* foot();
    void choosePrices();
    void showPrices();
    void seekOrEnough();
    void start();
    void tell(std::size_t tried);
    void showList(const seek::ShortList& list);
    void addCard(const seek::Candidate& candidate, std::size_t number);
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
    std::shared_ptr<const shop::Prices> prices_;  ///< null: mass stands in for cost
    std::shared_ptr<const shop::Prices> priced_;  ///< those that the list was made with
    QString priceFile_;
    QCheckBox *core_ = nullptr, *turns_ = nullptr, *wires_ = nullptr, *order_ = nullptr, *insulation_ = nullptr;
    QPushButton *seek_ = nullptr, *takeUp_ = nullptr, *beside_ = nullptr;
    QPushButton *choosePrices_ = nullptr, *noPrices_ = nullptr;
    QLabel *state_ = nullptr, *priceWords_ = nullptr;
    QHBoxLayout* row_ = nullptr;
    QButtonGroup* group_ = nullptr;
    QPlainTextEdit* words_ = nullptr;
};

}  // namespace bench
