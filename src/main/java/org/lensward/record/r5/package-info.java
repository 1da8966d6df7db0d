/** What the lens bank holds, as FHIR R5 says it; R4 is what is stored. */
@NullMarked
package org.lensward.record.r5;

import org.jspecify.annotations.NullMarked;
