/** What each column means: names, units, roles, and what the rig file says of them. */
@NullMarked
package io.rowledger.log.header;

import org.jspecify.annotations.NullMarked;
