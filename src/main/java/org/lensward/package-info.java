/** The application: one FHIR adapter, or one command. */
@NullMarked
package org.lensward;

import org.jspecify.annotations.NullMarked;
