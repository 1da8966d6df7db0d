/** What stays of what was asked for. */
@NullMarked
package org.lensward.record.audit;

import org.jspecify.annotations.NullMarked;
