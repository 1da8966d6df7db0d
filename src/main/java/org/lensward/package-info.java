/** The application: the adapter, the demo and the one-shot commands. */
@NullMarked
package org.lensward;

import org.jspecify.annotations.NullMarked;
