/** The lens check in FHIR: its Task read into the core, and each step written back as one guarded transaction. */
@NullMarked
package org.lensward.record.check;

import org.jspecify.annotations.NullMarked;
