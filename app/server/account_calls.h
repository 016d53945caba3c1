// Calls about people, devices, codes and sessions.
#pragma once

#include "server/call.h"
#include "server/house.h"

namespace steamworthy::server {

inline constexpr std::string_view session_cookie = "steamworthy_session";
inline constexpr std::string_view device_cookie = "steamworthy_device";

Outcome me(House& house, const Call& call);
Outcome enrol(House& house, const Call& call);
Outcome make_enrolment_code(House& house, const Call& call);
Outcome sign_in(House& house, const Call& call);
Outcome sign_out(House& house, const Call& call);
Outcome sessions(House& house, const Call& call);
Outcome end_session(House& house, const Call& call);
Outcome people(House& house, const Call& call);
Outcome add_person(House& house, const Call& call);
Outcome remove_person(House& house, const Call& call);
Outcome set_secret(House& house, const Call& call);
Outcome devices(House& house, const Call& call);
Outcome revoke_device(House& house, const Call& call);

/// Address with which one device enrols.
std::string enrolment_link(const std::string& origin, const std::string& code);

}  // namespace steamworthy::server
