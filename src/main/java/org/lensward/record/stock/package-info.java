/** The stock check on the record: what the kits of the coming days need, what the bank has for them, what to order. */
@NullMarked
package org.lensward.record.stock;

import org.jspecify.annotations.NullMarked;
