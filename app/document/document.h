// SPDX-License-Identifier: GPL-3.0-or-later
// The open design and its history. The only way in for an edit is `replace`.
#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "catalog/catalog.h"
#include "design/design.h"

namespace document {

/// Holds the committed design, what is being tried out, and the list of designs before and after. Threads, undo, held
/// traces and pairs share designs without locks or copies.
class Document : public QObject {
    Q_OBJECT
public:
    Document(std::shared_ptr<const catalog::Catalog> shop, design::DesignPtr start, QObject* parent = nullptr);

    [[nodiscard]] const design::DesignPtr& design() const noexcept;  ///< committed
    [[nodiscard]] const design::DesignPtr& shown() const noexcept;  ///< what is being tried out, else the committed one
    [[nodiscard]] const std::shared_ptr<const catalog::Catalog>& shop() const noexcept;

    /// One named undo step. Throws units::BadInput if `next` has faults (the document stays as it is); an equal design
    /// makes no step. Ends a preview.
    void replace(design::DesignPtr next, const QString& act);
    /// Shows `next` without history. Throws units::BadInput if it has faults.
    void preview(design::DesignPtr next);
    void endPreview();

    [[nodiscard]] bool canUndo() const noexcept;
    [[nodiscard]] bool canRedo() const noexcept;
    [[nodiscard]] QString undoText() const;  ///< the act that would be undone
    [[nodiscard]] QString redoText() const;
    void undo();
    void redo();

    [[nodiscard]] QString path() const;  ///< "" until saved or opened
    [[nodiscard]] bool modified() const noexcept;
    /// What stands in the file by now, as an undo step of its own; counts as saved.
    void adopt(design::DesignPtr inFile, const QString& act);
    /// The open design counts as being in no file: its copy there is gone or cannot be read.
    void setUnsaved();
    /// Starts over with a design that was opened from `path` ("" new).
    void open(design::DesignPtr design, const QString& path);
    /// Writes the design, with copies of the catalog entries used, to `path`. Throws units::BadInput or
    /// exchange::WriteFailed with one sentence; the open design is never damaged.
    void save(const QString& path);

signals:
    void opened();        ///< another design altogether; comes before `changed`
    void changed();       ///< committed design is another one
    void shownChanged();  ///< `shown()` is another one (also on every `changed`)
    void stateChanged();  ///< path, modified, undo or redo availability

private:
    struct State;
    std::shared_ptr<State> state_;
};

}  // namespace document
