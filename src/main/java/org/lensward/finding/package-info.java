/** What was found in the record that changes a plan, as data: code, evidence, remedy, source. */
@NullMarked
package org.lensward.finding;

import org.jspecify.annotations.NullMarked;
