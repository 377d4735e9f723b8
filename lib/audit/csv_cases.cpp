// SPDX-License-Identifier: MIT
#include <algorithm>

#include "audit/babies.h"
#include "batch/csv_lines.h"

namespace asterism::audit {

bool CaseColumns::has(std::string_view name) const {
    return std::find(named.begin(), named.end(), name) != named.end() ||
           std::find(ignored.begin(), ignored.end(), name) != ignored.end();
}

std::unique_ptr<batch::LineSource> csv_cases(batch::ReadBytes read, CaseColumns const& columns,
                                             std::string name) {
    batch::CsvOptions options;
    options.name = std::move(name);
    options.beside = {columns.named, columns.ignored,
                      "name it with --by to group by it, or with --ignore"};
    options.keep_rows = true;
    return batch::csv_lines(std::move(read), std::move(options));
}

}  // namespace asterism::audit
