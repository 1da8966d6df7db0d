/** Who may see and change what: roles, sign-in of people and machines, and what is refused. */
@NullMarked
package org.lensward.board.access;

import org.jspecify.annotations.NullMarked;
