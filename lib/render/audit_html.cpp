// SPDX-License-Identifier: MIT
#include "render/audit_report.h"

namespace asterism {
std::string audit_html(AuditReport const&) { return {}; }
}
