// SPDX-License-Identifier: GPL-3.0-or-later
// The kinds of unit that a new design may begin as, out of folders.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "design/enquiry.h"

namespace exchange {

/// Reads one file's text. Throws units::BadInput with every fault.
[[nodiscard]] std::map<std::string, design::Enquiry> readEnquiries(const std::string& text, const std::string& file);

/// Reads enquiries.json as far as it exists in each folder: an entry of a later folder rules over one of the same key.
/// Throws units::BadInput.
[[nodiscard]] std::map<std::string, design::Enquiry> loadEnquiries(const std::vector<std::string>& folders);

}  // namespace exchange
