// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/load_enquiries.h"

#include "exchange/named_files.h"
#include "json/record.h"
#include "json/text.h"
#include "units/fault.h"
#include "units/joined.h"

namespace exchange {

namespace {

struct EnquiryFile {
    std::map<std::string, design::Enquiry> entries;
    json::Value extra = nullptr;
};
template <class Visitor>
void fields(Visitor& visit, EnquiryFile& f) {
    visit.need("entries", f.entries);
}

}  // namespace

std::map<std::string, design::Enquiry> readEnquiries(const std::string& text, const std::string& file) {
    const json::Value root = json::read(text, file);
    if (!root.is_object()) units::refuse(file, json::foundWords(root), "an object in curly brackets");
    std::vector<units::Fault> faults;
    auto read = json::readRecord<EnquiryFile>(root, file, "", faults);
    for (const auto& [key, enquiry] : read.entries)
        if (enquiry.outputs.empty() || enquiry.outputs.size() > 8)
            faults.push_back({units::joined({file, ": /entries/", key, "/outputs"}),
                              std::to_string(enquiry.outputs.size()) + " outputs", "from 1 to 8"});
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    return std::move(read.entries);
}

std::map<std::string, design::Enquiry> loadEnquiries(const std::vector<std::string>& folders) {
    std::map<std::string, design::Enquiry> all;
    for (const auto& file : namedFiles(folders, {"enquiries.json"}))
        for (auto& [key, enquiry] : readEnquiries(file.text, file.name)) all.insert_or_assign(key, std::move(enquiry));
    return all;
}

}  // namespace exchange
