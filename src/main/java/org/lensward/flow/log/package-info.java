/** What is written to the log and how: one line for one event, the booking it belongs to, never a patient. */
@NullMarked
package org.lensward.flow.log;

import org.jspecify.annotations.NullMarked;
