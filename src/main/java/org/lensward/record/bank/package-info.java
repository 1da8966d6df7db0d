/** The lens bank in the record: cartons as Devices, each movement a guarded transaction with its trail, and who has what. */
@NullMarked
package org.lensward.record.bank;

import org.jspecify.annotations.NullMarked;
