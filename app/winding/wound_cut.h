// SPDX-License-Identifier: GPL-3.0-or-later
// The cut as it stands at a point of a winding program, with the guide.
#pragma once

#include <QWidget>
#include <memory>

#include "design/design.h"
#include "replay/progress.h"
#include "winding/proof.h"

namespace winding {

class WoundCut : public QWidget {
    Q_OBJECT
public:
    explicit WoundCut(QWidget* parent = nullptr);
    void showProof(std::shared_ptr<const Proof> proof, design::DesignPtr design);
    void showProgress(const replay::Progress& progress);
    [[nodiscard]] QSize sizeHint() const override { return {420, 420}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {200, 200}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::shared_ptr<const Proof> proof_;
    design::DesignPtr design_;
    replay::Progress progress_;
};

}  // namespace winding
