// SPDX-License-Identifier: GPL-3.0-or-later
// What a production of the open design will do: computed aside, kept until it is asked anew.
#pragma once

#include <QObject>
#include <memory>

#include "document/document.h"
#include "solver/aside.h"
#include "spread/bands.h"
#include "spread/sensitivity.h"
#include "spread/summary.h"

namespace bench {

/// What is asked of a study.
struct SpreadAsked {
    std::uint64_t units = 1000, seed = 1, lotSize = 20;
    bool everyFigure = false;  ///< not only what is promised
};

/// What came out, as far as it is there: units first, then slopes, then bands.
struct SpreadFound {
    design::DesignPtr design;
    std::shared_ptr<const catalog::Catalog> shop;  ///< which the study refers to
    std::shared_ptr<const spread::Study> study;
    spread::Head head;
    spread::Summary summary;
    std::vector<std::vector<spread::Slope>> slopes;  ///< a column each; empty: not yet
    std::vector<spread::TraceBand> bands;
};

/// Runs one study at a time in other threads, one fewer than the machine has. A study is dropped when another design
/// comes to the bench; what was found stays and is not current from then on.
class SpreadStudy : public QObject {
    Q_OBJECT
public:
    enum class Phase { None, Units, Slopes, Bands };

    /// `folders`: of data, with the tolerances of the shop.
    SpreadStudy(document::Document& document, std::vector<std::string> folders, QObject* parent = nullptr);
    ~SpreadStudy() override;

    void start(const SpreadAsked& asked);
    /// What was found until then stays.
    void cancel();
    /// These traces of this hook-up ("" the first) are looked at: their bands are computed where there are none.
    void lookAt(const std::string& hookUp, const std::vector<std::string>& traces);

    [[nodiscard]] const SpreadFound* found() const { return found_.get(); }
    [[nodiscard]] std::shared_ptr<const SpreadFound> shared() const { return found_; }
    /// Whether what was found is of the design that is shown now.
    [[nodiscard]] bool current() const { return found_ && found_->design == document_.shown(); }
    [[nodiscard]] Phase phase() const { return phase_; }
    [[nodiscard]] bool busy() const { return phase_ != Phase::None; }
    [[nodiscard]] double share() const { return share_; }      ///< of the phase, 0 to 1
    [[nodiscard]] const QString& why() const { return why_; }  ///< what was in the way of the last one, "" nothing

signals:
    void changed();  ///< what was found, whether it is current, or the phase
    void progressed();

private:
    void startSlopes();
    void startBands();
    void begin(Phase phase);
    void end();
    void designChanged();
    [[nodiscard]] spread::Study::Progress progress(std::uint64_t all);
    [[nodiscard]] std::vector<std::string> tracesMissing() const;

    document::Document& document_;
    std::vector<std::string> folders_;
    solver::Aside aside_;
    design::DesignPtr asked_;  ///< whose study runs
    std::shared_ptr<SpreadFound> found_;
    std::string hookUp_;
    std::vector<std::string> traces_;
    Phase phase_ = Phase::None;
    double share_ = 0;
    bool wasCurrent_ = false;
    QString why_;
    unsigned threads_;
};

}  // namespace bench
