/** Who did what through Lensward, as AuditEvents in the record. */
@NullMarked
package org.lensward.record.audit;

import org.jspecify.annotations.NullMarked;
