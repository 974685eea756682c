// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/winding_program.h"

#include <algorithm>
#include <cmath>

#include "exchange/block_writer.h"
#include "exchange/winding_strokes.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using units::joined;
constexpr double centinewtonsANewton = 100;

class ProgramWriter {
public:
    ProgramWriter(const WindingPlan& plan, const Winder& winder) : plan_(plan), w_(winder) {}

    std::string all() {
        text_ = joined({"%", std::to_string(plan_.leg), "\n"});
        comment(joined({"WINDING PROGRAM, ", plan_.design, ", revision ", plan_.revision,
                        plan_.partNumber.empty() ? "" : ", part " + plan_.partNumber}));
        comment(joined({"coil ", std::to_string(plan_.leg), " of ", std::to_string(plan_.legs), ", for ", w_.title,
                        ", winds ", std::to_string(w_.spindles), w_.spindles > 1 ? " coils alike" : " coil"}));
        comment("INSIDE PAPER, carries the winding recipe, not for customers");
        for (const std::string& line : windingCaution()) comment(line);
        if (w_.traverse) comment("zero of the traverse at the window's lower wall, low end first");
        if (w_.depth) comment("zero of the depth at the tongue's surface, of the cross axis at the bobbin's middle");
        for (const auto& step : plan_.steps) write(step);
        BlockWords end(w_);
        block(end.auxiliary(w_.codes.end));
        if (blocks_ > w_.maximumBlocks)
            units::refuse(w_.title, std::to_string(blocks_) + " blocks",
                          joined({"up to ", std::to_string(w_.maximumBlocks), " blocks, what the machine holds"}));
        return std::move(text_);
    }

private:
    void comment(const std::string& words) {
        constexpr std::size_t most = 100;
        std::string plain = commentText(words);
        while (!plain.empty()) {
            std::size_t cut = plain.size();
            if (cut > most) {
                cut = plain.rfind(' ', most);
                if (cut == std::string::npos || cut == 0) cut = most;
            }
            text_ += joined({"(", plain.substr(0, cut), ")\n"});
            plain.erase(0, cut);
            plain.erase(0, plain.find_first_not_of(' '));
        }
    }
    void block(const BlockWords& words, char head = 'N') {
        ++blocks_;
        text_ += joined({std::string(1, head), std::to_string(blocks_ * w_.numberStep), " ", words.text(), "\n"});
    }

    void write(const PlannedStep& step) {
        comment(joined({"WINDING SHEET STEP ", coil::stepNumber(step.item), ", ", step.title,
                        step.layers.empty() ? ""
                                            : joined({", ", std::to_string(step.layers.size()),
                                                      step.layers.size() > 1 ? " layers" : " layer"}),
                        step.reversed ? ", opposite sense" : ""}));
        BlockWords head(w_);
        head.preparatory(w_.codes.absolute).preparatory(w_.unit == ProgramUnit::Inch ? w_.codes.inch : w_.codes.metric);
        if (w_.depth) head.preparatory(w_.codes.rapid).length(w_.depth->letter, plan_.travelDepth, w_.depth->decimals);
        head.auxiliary(w_.codes.spindleStop);
        block(head, ':');
        lifted_ = true;
        for (const auto& stop : step.stops)
            if (stop.opening) write(stop, step);
        if (w_.tension && step.tension > 0) {
            BlockWords brake(w_);
            brake.whole(w_.tension->letter, centinewtons(step));
            block(brake);
        }
        const std::vector<Stroke> all = strokes(step, w_);
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (all[k].rests) approach(all[k], k == 0 ? nullptr : &all[k - 1]);
            wind(all[k], step);
            for (const auto& stop : step.stops)
                if (!stop.opening && counted(stop.after, w_) == counted(all[k].first + all[k].turns, w_))
                    write(stop, step);
        }
    }
    long long centinewtons(const PlannedStep& step) const {
        const double asked = std::clamp(step.tension, w_.tension->lowest, w_.tension->highest);
        return std::clamp(std::llround(asked * centinewtonsANewton),
                          std::llround(std::ceil(w_.tension->lowest * centinewtonsANewton)),
                          std::llround(std::floor(w_.tension->highest * centinewtonsANewton)));
    }

    /// The guide goes to where the stroke begins; the spindle stands.
    void approach(const Stroke& stroke, const Stroke* before) {
        if (!w_.traverse) return;
        const bool there = before != nullptr && std::abs(before->to - stroke.from) < 1e-9 && !lifted_;
        if (there) return;
        BlockWords move(w_);
        move.preparatory(w_.codes.rapid).length(w_.traverse->letter, stroke.from, w_.traverse->decimals);
        if (w_.cross && lifted_) move.length(w_.cross->letter, 0, w_.cross->decimals);
        block(move.auxiliary(w_.codes.spindleStop));
        if (w_.depth) {
            BlockWords down(w_);
            block(down.preparatory(w_.codes.rapid).length(w_.depth->letter, stroke.depth, w_.depth->decimals));
        }
        lifted_ = false;
    }

    void wind(const Stroke& stroke, const PlannedStep& step) {
        BlockWords words(w_);
        words.preparatory(w_.codes.wind);
        if (w_.traverse) words.length(w_.traverse->letter, stroke.to, w_.traverse->decimals);
        if (w_.depth) words.length(w_.depth->letter, stroke.depth, w_.depth->decimals);
        words.number(w_.counter.letter, w_.counter.running ? stroke.first + stroke.turns : stroke.turns,
                     w_.counter.decimals);
        if (w_.traverse && stroke.pitch > 0) words.length(w_.pitchLetter, stroke.pitch, w_.pitchDecimals);
        if (!w_.spindle.letter.empty()) words.whole(w_.spindle.letter, stroke.rpm);
        if (stroke.rests) words.auxiliary(step.reversed ? w_.codes.counterclockwise : w_.codes.clockwise);
        block(words);
    }

    void lift() {
        if (lifted_ || !w_.depth) return;
        BlockWords up(w_);
        block(up.preparatory(w_.codes.rapid)
                  .length(w_.depth->letter, plan_.travelDepth, w_.depth->decimals)
                  .auxiliary(w_.codes.spindleStop));
        lifted_ = true;
    }

    void write(const PlannedStop& stop, const PlannedStep& step) {
        if (stop.wrap) {
            lift();
            BlockWords move(w_);
            block(move.preparatory(w_.codes.rapid)
                      .length(w_.traverse->letter, stop.wrap->traverse, w_.traverse->decimals)
                      .length(w_.cross->letter, stop.wrap->cross, w_.cross->decimals));
            BlockWords wrap(w_);
            block(wrap.whole(w_.pinWrap->countLetter, w_.pinWrap->wraps)
                      .auxiliary(w_.pinWrap->code)
                      .message(joined({"PIN WRAP, ", commentText(stop.words)})));
            return;
        }
        const StopCode& code = w_.stops.of(stop.kind);
        BlockWords halt(w_);
        if (!w_.reasonLetter.empty()) halt.whole(w_.reasonLetter, code.number);
        std::string words =
            joined({w_.messageWord, w_.messageWord.empty() ? "" : " ", code.word, " ", commentText(stop.words)});
        if (stop.kind == StopKind::Wire && w_.tension)
            words += joined({", TENSION ", std::to_string(centinewtons(step)), " CN"});
        block(halt.auxiliary(w_.codes.stop).message(words));
    }

    const WindingPlan& plan_;
    const Winder& w_;
    std::string text_;
    int blocks_ = 0;
    bool lifted_ = false;  // the guide stands outside the coil
};

}  // namespace

std::vector<std::string> windingCaution() {
    return {"CAUTION, dry run first without wire, guards closed, hands clear of spindle, wire and pins",
            "the rules of the machine's maker and the local rules rule over this program"};
}

std::string windingProgram(const WindingPlan& plan, const Winder& winder) {
    return ProgramWriter(plan, winder).all();
}

}  // namespace exchange
