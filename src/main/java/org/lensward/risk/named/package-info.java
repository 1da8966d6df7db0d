/** What may go wrong with this eye besides its capsule: each risk by name, with what it rests on. */
@NullMarked
package org.lensward.risk.named;

import org.jspecify.annotations.NullMarked;
