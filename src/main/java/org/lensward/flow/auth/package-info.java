/** How the adapter shows the record who it is: keys, tokens, certificates, and to whom they may be shown. */
@NullMarked
package org.lensward.flow.auth;

import org.jspecify.annotations.NullMarked;
