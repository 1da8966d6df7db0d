/** A hospital's own codes, units, eyes and identifiers, read as ours: FHIR in, FHIR out, nothing taken away. */
@NullMarked
package org.lensward.record.site;

import org.jspecify.annotations.NullMarked;
