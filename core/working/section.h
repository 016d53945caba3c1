// Section: figures under one heading, with what is to be said and heeded beside them.
#pragma once

#include <string>
#include <vector>

#include "working/figure.h"

namespace steamworthy::working {

struct Section {
  std::string key;  ///< words key of its heading
  std::vector<Figure> figures = {};
  std::vector<Message> notes = {};
  std::vector<Message> cautions = {};
};

}  // namespace steamworthy::working
