/** FHIR R4 in and out: reading the record into the core's words, writing a plan as one transaction. */
@NullMarked
package org.lensward.record;

import org.jspecify.annotations.NullMarked;
