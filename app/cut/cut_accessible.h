// SPDX-License-Identifier: GPL-3.0-or-later
// The cut for those who do not see it: a list with an entry for every item of the coil.
#pragma once

namespace cut {

/// Makes the cut's items known to screen readers. Called once before the first cut is shown; more calls do nothing.
void announceCuts();

}  // namespace cut
