// SPDX-License-Identifier: GPL-3.0-or-later
// New designs, and designs drawn up anew from their brief.
#include <any>

#include "bench/bench_window.h"
#include "bench/language.h"
#include "bench/start_page.h"
#include "design/unsaid.h"
#include "exchange/load_enquiries.h"
#include "seek/first_design.h"

namespace bench {

namespace {

struct Drawn {
    design::DesignPtr design;
    QString why;  ///< without a design
};

Drawn drawn(const design::Design& sketch, const catalog::Catalog& shop) {
    try {
        return {seek::firstDesign(seek::needOf(sketch, sketch.name), shop), {}};
    } catch (const units::BadInput& bad) {
        return {nullptr, translated(bad.what())};
    }
}

}  // namespace

std::map<std::string, design::Enquiry> BenchWindow::kindsOfUnit() {
    try {
        return exchange::loadEnquiries(resources_);
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
        return {};
    }
}

void BenchWindow::askForNew() {
    showStart();
    if (auto* page = qobject_cast<StartPage*>(pages_->currentWidget())) page->pointAtBlanks();
}

void BenchWindow::drawUp(design::DesignPtr sketch, std::function<void(const design::DesignPtr&)> take) {
    drawing_.start([sketch = std::move(sketch),
                    shop = document_.shop()](const std::stop_token&) -> std::any { return drawn(*sketch, *shop); },
                   [this, take = std::move(take)](const std::any& made) {
                       const auto& result = std::any_cast<const Drawn&>(made);
                       if (result.design)
                           take(result.design);
                       else
                           say(result.why);
                   });
}

void BenchWindow::newOf(const std::string& kind) {
    const auto kinds = kindsOfUnit();
    const auto found = kinds.find(kind);
    if (found == kinds.end()) return;
    drawUp(std::make_shared<const design::Design>(seek::sketchOf(found->second)),
           [this](const design::DesignPtr& first) {
               selection_.select(document::WholePart{document::WholePart::Which::Brief});
               document_.open(first, {});
               showBench();
               hold({});
               say(tr("%1 begins here and has no file yet; points to ask the customer yet: %2, in the brief.")
                       .arg(QString::fromStdString(first->name))
                       .arg(design::unsaid(*first).size()));
           });
}

void BenchWindow::drawUp() {
    const design::DesignPtr before = document_.design();
    drawUp(before, [this, before](const design::DesignPtr& first) {
        if (document_.design() != before) return say(tr("The design was changed while it was drawn up; do it again."));
        document_.replace(first, tr("drawn up anew"));
        say(tr("Core, turns, wires and order are drawn up anew from the brief; the promises tell what is kept."));
    });
}

}  // namespace bench
