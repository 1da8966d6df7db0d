/** FHIR operations on our own endpoint. */
@NullMarked
package org.lensward.board.fhir;

import org.jspecify.annotations.NullMarked;
