// SPDX-License-Identifier: GPL-3.0-or-later
// A file of unit records: written in transactions, asked by what one looks for.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "records/database.h"
#include "records/unit_record.h"

namespace records {

/// Which records are meant; "" any. Times are compared as text, so a day stands for its beginning.
struct Filter {
    std::string part, revision, serial, stage, lot, verdict, cause;
    std::string from, before;  ///< from <= time < before
};

/// Readings of one test in the order of time, with what they belong to.
struct Series {
    std::string unit;
    std::vector<std::string> serials, times;
    std::vector<double> values;
};

struct Counts {
    std::size_t units = 0, passed = 0, failed = 0;  ///< records; those without a verdict are neither
};

class Store {
public:
    /// As `openRecords`.
    explicit Store(const std::string& path, bool create = false);

    struct Added {
        std::size_t added = 0, known = 0;  ///< `known`: already there with the same part, serial, stage and time
    };
    /// Adds records, `batch` of them in a transaction; `committed` is told how many are safe after each. A record
    /// that is already there is left as it is. Throws RecordsFailed; batches told of are kept.
    Added add(const std::vector<UnitRecord>& units, std::size_t batch = 500,
              const std::function<void(std::size_t)>& committed = {});

    /// In order of time; at most `limit`.
    [[nodiscard]] std::vector<UnitRecord> find(const Filter& filter, std::size_t limit = 1000);
    /// What `record` asks for, the newest first: a hundred thousand records are shown a page at a time.
    [[nodiscard]] std::vector<std::int64_t> numbers(const Filter& filter);
    /// Throws RecordsFailed where there is no such record.
    [[nodiscard]] UnitRecord record(std::int64_t number);
    [[nodiscard]] Counts count(const Filter& filter);
    /// Names and units of all tests that the records meant have readings of, in order.
    [[nodiscard]] std::vector<std::pair<std::string, std::string>> tests(const Filter& filter);
    [[nodiscard]] Series series(const std::string& test, const Filter& filter);
    /// Causes told of failed records, "" for none, with how often.
    [[nodiscard]] std::vector<std::pair<std::string, std::size_t>> causes(const Filter& filter);

    /// A whole copy as of now while others go on writing; the file at `path` is replaced at once or not at all. Throws
    /// RecordsFailed.
    void backup(const std::string& path);

private:
    std::int64_t testId(const std::string& name, const std::string& unit);
    bool addOne(const UnitRecord& unit);
    void readParts(std::int64_t id, UnitRecord& into);

    Database database_;
    std::map<std::string, std::pair<std::int64_t, std::string>> tests_;  ///< id and unit, within a batch
};

}  // namespace records
