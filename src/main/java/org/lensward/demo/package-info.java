/** The embedded record: a real HAPI FHIR JPA server in this process, filled with the demo's theatre day. */
@NullMarked
package org.lensward.demo;

import org.jspecify.annotations.NullMarked;
