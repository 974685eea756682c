// SPDX-License-Identifier: GPL-3.0-or-later
// The kept revisions of a design: what was kept when and why, and how far each has come. A revision once issued is
// never altered, only followed by another.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace design {

/// How far a revision has come. It only goes onward.
enum class Issue { Draft, Sample, Released, Retired };
constexpr std::array<std::pair<const char*, Issue>, 4> names(Issue) {
    return {{{"draft", Issue::Draft},
             {"sample", Issue::Sample},
             {"released", Issue::Released},
             {"retired", Issue::Retired}}};
}
[[nodiscard]] std::string word(Issue issue);

/// One step on that way.
struct IssueStep {
    Issue issue = Issue::Draft;
    std::string date;  ///< "2026-11-25"
    std::string by;    ///< who approved it
    std::string note;
    json::Value extra = nullptr;
    bool operator==(const IssueStep&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, IssueStep& s) {
    visit.need("state", s.issue);
    visit.need("date", s.date);
    visit.may("by", s.by);
    visit.may("note", s.note);
}

/// One kept revision. Everything but its steps and first lot stands once and for all.
struct Revision {
    int number = 1;             ///< counted from 1 without gaps
    std::string mark;           ///< the design's own: "B"
    std::string date;           ///< kept on
    std::string reason;         ///< why it was kept
    std::string digest;         ///< of the design's canonical text, with the catalog entries it used
    std::string figuresDigest;  ///< of its stored figures
    std::string program;        ///< which computed them
    std::string notice;         ///< what the customer was told of a substitution
    std::vector<IssueStep> steps;
    std::string firstLot;
    json::Value extra = nullptr;
    bool operator==(const Revision&) const = default;
    /// The last step; a draft before the first.
    [[nodiscard]] Issue issue() const { return steps.empty() ? Issue::Draft : steps.back().issue; }
};
template <class Visitor>
void fields(Visitor& visit, Revision& r) {
    visit.need("number", r.number, json::within(1, 100000));
    visit.may("revision", r.mark);
    visit.need("date", r.date);
    visit.need("reason", r.reason);
    visit.need("digest", r.digest);
    visit.need("figures_digest", r.figuresDigest);
    visit.may("program", r.program);
    visit.may("notice", r.notice);
    visit.may("steps", r.steps);
    visit.may("first_lot", r.firstLot);
}

/// A part number under which the same coil is sold with something else about it.
struct Variant {
    std::string partNumber;
    int number = 1;    ///< of the revision whose coil it has
    std::string what;  ///< what is different: "leads 300 mm"
    json::Value extra = nullptr;
    bool operator==(const Variant&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Variant& v) {
    visit.need("part_number", v.partNumber);
    visit.need("revision_number", v.number, json::within(1, 100000));
    visit.may("what", v.what);
}

/// All kept revisions of one design.
struct Register {
    std::vector<Revision> revisions;  ///< by number
    std::vector<Variant> variants;
    json::Value extra = nullptr;
    bool operator==(const Register&) const = default;
    [[nodiscard]] const Revision* find(int number) const;
};
template <class Visitor>
void fields(Visitor& visit, Register& r) {
    visit.may("revisions", r.revisions);
    visit.may("variants", r.variants);
}

/// The register with one revision more: its number follows. Throws units::BadInput: no reason, a date that is none, the
/// same content as the last one, or a mark that was issued already (sample or further): the design needs another.
[[nodiscard]] Register withRevision(const Register& all, Revision next);
/// The register with that revision one step further. Throws units::BadInput: no such revision, a step that does not go
/// onward, a date that is none, or nobody who approves a release.
[[nodiscard]] Register withStep(const Register& all, int number, const IssueStep& step);
/// Notes the lot that was first wound. Throws units::BadInput: no such revision, not released, or noted already.
[[nodiscard]] Register withFirstLot(const Register& all, int number, const std::string& lot);
/// Adds a part number that shares the coil of a revision. Throws units::BadInput: no such revision, or a part number
/// that is empty or taken.
[[nodiscard]] Register withVariant(const Register& all, const Variant& variant);

}  // namespace design
