/** Bank files: YAML or JSON into the model with every fault named, the model back into YAML, and the summary of a bank. */
@NullMarked
package org.varwright.bankfile;

import org.jspecify.annotations.NullMarked;
