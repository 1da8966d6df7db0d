/** How operated eyes saw afterwards, read from exports and records of any size, and the figures written back. */
@NullMarked
package org.lensward.record.outcome;

import org.jspecify.annotations.NullMarked;
