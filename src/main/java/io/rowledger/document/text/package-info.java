/** Words and numbers as a document prints them; knows nothing of farming. */
@NullMarked
package io.rowledger.document.text;

import org.jspecify.annotations.NullMarked;
