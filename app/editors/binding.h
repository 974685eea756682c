// SPDX-License-Identifier: GPL-3.0-or-later
// The traffic between one field and the document.
#pragma once

#include <QObject>

#include "document/document.h"
#include "editors/part.h"

namespace editors {

/// Tries and commits what stands in a field, and keeps the sentence about what is wrong with it. While a fault stands
/// the field is never told to show the design: what was typed is not lost.
class Binding : public QObject {
    Q_OBJECT
public:
    Binding(document::Document& document, Part part, QObject* parent);

    [[nodiscard]] const Part& part() const noexcept { return part_; }
    [[nodiscard]] document::Document& document() const noexcept { return document_; }
    [[nodiscard]] QString committed() const;  ///< text of the committed design; "" if it has no such part
    [[nodiscard]] bool exists() const;        ///< the design has this part
    [[nodiscard]] QString act() const;
    [[nodiscard]] const QString& fault() const noexcept { return fault_; }

    bool preview(const QString& text);  ///< curves move, history does not; false: a fault stands
    bool commit(const QString& text);   ///< one undo step; false: a fault stands and the design is as it was
    void restore();                     ///< drops what was tried and the fault; the field shows the design again

signals:
    void designChanged();  ///< show `committed()`
    void faultChanged();

private:
    template <class Do>
    bool attempt(Do act);
    void explain(const QString& sentence);

    document::Document& document_;
    Part part_;
    QString fault_;
    bool committing_ = false;
};

}  // namespace editors
