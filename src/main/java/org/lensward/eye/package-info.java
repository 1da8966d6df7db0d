/** What is known of one eye: its side, biometry, history, and whether the numbers can be trusted. */
@NullMarked
package org.lensward.eye;

import org.jspecify.annotations.NullMarked;
