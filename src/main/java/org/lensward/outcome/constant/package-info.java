/** What the errors teach of lens constants: proposals that a named clinician may adopt. */
@NullMarked
package org.lensward.outcome.constant;

import org.jspecify.annotations.NullMarked;
