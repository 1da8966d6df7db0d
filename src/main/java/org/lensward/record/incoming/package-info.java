/** What other systems bring to the record: whose it is, what it is, and why it is refused. */
@NullMarked
package org.lensward.record.incoming;

import org.jspecify.annotations.NullMarked;
